#include "plan/write_card.hpp"

#include <algorithm>

namespace sealworthy::plan {
namespace {

bool safe_plain(std::string_view text) {
  if (text.empty() || text.front() == ' ' || text.back() == ' ' || text.back() == ':') return false;
  const auto letter_or_digit = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
  };
  if (!letter_or_digit(text.front())) return false;
  if (text.find(": ") != std::string_view::npos || text.find(" #") != std::string_view::npos) return false;
  if (text == "null" || text == "Null" || text == "NULL") return false;
  return std::all_of(text.begin(), text.end(), [](char c) {
    return static_cast<unsigned char>(c) >= 0x20 && c != '"' && c != '[' && c != ']' && c != '{' && c != '}';
  });
}

void append_line(std::string& out, std::string_view indent, std::string_view key, std::string_view value) {
  if (value.empty()) return;
  out.append(indent).append(key).append(": ").append(scalar(value)).append("\n");
}

template <class T>
std::string_view text_of(const std::optional<recipe::Placed<T>>& value) {
  return value ? value->text : std::string_view();
}

void append_jars(std::string& out, std::string_view indent,
                 const std::vector<recipe::Placed<quantity::JarText>>& jars) {
  if (jars.empty()) return;
  std::string list;
  for (const auto& jar : jars) {
    if (!list.empty()) list += ", ";
    list += jar.value.mouth.empty() ? scalar(jar.text)
                                    : "{size: " + scalar(jar.text) + ", mouth: " + jar.value.mouth + "}";
  }
  out.append(indent).append("jars: ");
  out += jars.size() == 1 ? list : "[" + list + "]";
  out += "\n";
}

void append_process(std::string& out, const recipe::Process& process, bool item) {
  std::string body;
  const std::string_view indent = item ? "    " : "  ";
  append_line(body, indent, "method", text_of(process.method));
  append_line(body, indent, "gauge", text_of(process.gauge));
  append_line(body, indent, "pressure", text_of(process.pressure));
  append_line(body, indent, "time", text_of(process.time));
  append_line(body, indent, "altitude", text_of(process.altitude));
  append_jars(body, indent, process.jars);
  append_line(body, indent, "headspace", text_of(process.headspace));
  if (item && body.size() > 2) body[2] = '-';
  out += body;
}

}  // namespace

std::string scalar(std::string_view text) {
  if (safe_plain(text)) return std::string(text);
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    if (c == '\n')
      out += "\\n";
    else if (c == '\t')
      out += "\\t";
    else
      out += c;
  }
  return out + "\"";
}

std::string write_card(const recipe::Recipe& recipe, const std::vector<std::string>& lines,
                       std::string_view makes) {
  std::string out;
  append_line(out, "", "recipe", recipe.title.value);
  append_line(out, "", "follows", text_of(recipe.follows));
  if (recipe.units != quantity::Units::us)
    append_line(out, "", "units", recipe.units == quantity::Units::metric ? "metric" : "imperial");
  append_line(out, "", "makes", makes);
  out += "ingredients:\n";
  for (std::size_t i = 0; i < recipe.ingredients.size(); ++i) {
    const auto& line = recipe.ingredients[i];
    out += "  - ";
    if (line.per_jar) out += "each " + std::string(line.per_jar_of ? line.per_jar_of->text : "jar") + ": ";
    out += scalar(lines[i]) + "\n";
  }
  append_line(out, "", "pack", text_of(recipe.pack));
  append_jars(out, "", recipe.jars);
  append_line(out, "", "headspace", text_of(recipe.headspace));
  if (!recipe.processes.empty()) {
    out += "process:\n";
    for (const auto& process : recipe.processes) append_process(out, process, recipe.processes.size() > 1);
  }
  if (!recipe.steps.empty()) {
    out += "steps:\n";
    for (const auto& step : recipe.steps) out += "  - " + scalar(step.value) + "\n";
  }
  append_line(out, "", "lids", text_of(recipe.lids));
  if (!recipe.accept.empty()) {
    out += "accept:\n";
    for (const auto& accept : recipe.accept)
      out += "  - rule: " + scalar(accept.rule.value) + "\n    because: " + scalar(accept.because) + "\n";
  }
  return out;
}

}  // namespace sealworthy::plan
