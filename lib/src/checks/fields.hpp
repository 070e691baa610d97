#pragma once

/// Reading one map of a rules file strictly: what is asked for is what may stand there; the rest is an error
/// with the nearest key that is known.

#include <optional>
#include <sealworthy/position.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "yaml/document.hpp"

namespace sealworthy::checks {

/// Where errors of one file go.
struct ErrorSink {
  std::string_view file;
  std::vector<foods::LoadError>& errors;

  void add(Position at, std::string message, std::string suggestion = {}) const;
};

/// A scalar that is a number and nothing else.
std::optional<double> number_of(const yaml::Node& node);

class Fields {
 public:
  /// `what` names the map in messages ("rule inversion"). A node that is no map is an error and reads as
  /// empty.
  Fields(const yaml::Node& map, std::string what, ErrorSink sink);

  /// The value under a key, or nullptr; the key counts as known from here on.
  const yaml::Node* find(std::string_view key);
  /// A scalar's text; empty where the key is missing (an error if `required`) or no scalar (an error).
  std::string text(std::string_view key, bool required = false);
  /// A scalar or a list of scalars.
  std::vector<std::string> list(std::string_view key);
  std::optional<double> number(std::string_view key);
  /// yes | no | true | false; `otherwise` where the key is missing.
  bool flag(std::string_view key, bool otherwise = false);
  /// One of the words, as its index; nullopt where the key is missing (an error if `required`) or names none.
  std::optional<std::size_t> choice(std::string_view key, const std::vector<std::string_view>& words,
                                    bool required = false);
  /// A list of words, as a set of bits (1 << index).
  unsigned choices(std::string_view key, const std::vector<std::string_view>& words);
  /// To be called last: every key not asked for is an error.
  void done();

  [[nodiscard]] const ErrorSink& sink() const { return sink_; }
  [[nodiscard]] Position at() const { return map_.at; }

 private:
  std::optional<std::size_t> word_index(const yaml::Node& node, std::string_view key,
                                        const std::vector<std::string_view>& words) const;

  const yaml::Node& map_;
  std::string what_;
  ErrorSink sink_;
  std::vector<std::string_view> known_;
};

}  // namespace sealworthy::checks
