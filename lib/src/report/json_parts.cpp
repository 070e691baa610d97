#include "report/json_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

namespace sealworthy::report {
namespace {

/// Most texts stand in JSON as they are; the library writes the others.
void append_text(std::string& out, std::string_view text) {
  bool plain = true;
  for (const char c : text) plain &= c >= ' ' && c < '\x7f' && c != '"' && c != '\\';
  if (!plain) {
    out += json_text(Json(text));
    return;
  }
  out += '"';
  out += text;
  out += '"';
}

}  // namespace

std::string json_text(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

void JsonObject::begin(std::string_view name) {
  if (!std::exchange(first_, false)) out_ += ',';
  append_text(out_, name);
  out_ += ':';
}

void JsonObject::add(std::string_view name, std::string_view text) {
  begin(name);
  append_text(out_, text);
}

void JsonObject::add(std::string_view name, int number) {
  begin(name);
  fmt::format_to(std::back_inserter(out_), "{}", number);
}

void JsonObject::add(std::string_view name, bool value) {
  begin(name);
  out_ += value ? "true" : "false";
}

void JsonObject::add(std::string_view name, const std::vector<std::string>& texts) {
  begin(name);
  char before = '[';
  if (texts.empty()) out_ += before;
  for (const auto& text : texts) {
    out_ += std::exchange(before, ',');
    append_text(out_, text);
  }
  out_ += ']';
}

void JsonObject::add_value(std::string_view name, const Json& value) {
  begin(name);
  out_ += json_text(value);
}

JsonObject JsonObject::object(std::string_view name) {
  begin(name);
  return JsonObject(out_);
}

JsonList JsonObject::list(std::string_view name) {
  begin(name);
  return JsonList(out_);
}

JsonObject JsonList::object() {
  if (!std::exchange(first_, false)) out_ += ',';
  return JsonObject(out_);
}

}  // namespace sealworthy::report
