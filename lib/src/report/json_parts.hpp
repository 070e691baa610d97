#pragma once

/// What the formats made of JSON share.

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

namespace sealworthy::report {

using Json = nlohmann::ordered_json;

/// In one line. Bytes that are no UTF-8 (a path may hold them) are replaced, so that it is always valid JSON.
std::string json_text(const Json& json);

class JsonList;

/// Appends an object to a text in the order of the calls, as json_text would write it, without building a
/// tree: that takes most of the time where many reports are written. An object or list within must be gone
/// before the next member is added.
class JsonObject {
 public:
  explicit JsonObject(std::string& out) : out_(out) { out_ += '{'; }
  JsonObject(const JsonObject&) = delete;
  JsonObject& operator=(const JsonObject&) = delete;
  ~JsonObject() { out_ += '}'; }

  void add(std::string_view name, std::string_view text);
  void add(std::string_view name, const std::string& text) { add(name, std::string_view(text)); }
  void add(std::string_view name, const char* text) { add(name, std::string_view(text)); }
  void add(std::string_view name, int number);
  void add(std::string_view name, bool value);
  void add(std::string_view name, const std::vector<std::string>& texts);
  /// Nothing for an empty text.
  void add_told(std::string_view name, std::string_view text) {
    if (!text.empty()) add(name, text);
  }
  void add_value(std::string_view name, const Json& value);
  JsonObject object(std::string_view name);
  JsonList list(std::string_view name);

 private:
  void begin(std::string_view name);

  std::string& out_;
  bool first_ = true;
};

/// A list of objects.
class JsonList {
 public:
  explicit JsonList(std::string& out) : out_(out) { out_ += '['; }
  JsonList(const JsonList&) = delete;
  JsonList& operator=(const JsonList&) = delete;
  ~JsonList() { out_ += ']'; }
  JsonObject object();

 private:
  std::string& out_;
  bool first_ = true;
};

}  // namespace sealworthy::report
