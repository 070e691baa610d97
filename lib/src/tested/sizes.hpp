#pragma once

/// Jar sizes and headspaces of rules/jars.yaml.

#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "checks/fields.hpp"
#include "knowledge/sources.hpp"
#include "tested/tables.hpp"

namespace sealworthy::tested {

struct Sizes {
  std::vector<JarSize> jars;                        ///< smallest first
  std::vector<std::pair<Volume, JarIndex>> metric;  ///< metric jars and the size they are counted as
  std::vector<Headspace> headspaces;                ///< those that the publications use

  /// Takes a document with `jars:`.
  void load(const yaml::Document& document, const knowledge::Sources& sources, checks::ErrorSink sink);

  [[nodiscard]] std::optional<JarIndex> find(std::string_view id) const;
  /// The smallest size that holds at least as much, or the one that a metric jar is counted as.
  [[nodiscard]] std::optional<JarIndex> of(const quantity::JarText& jar) const;
  /// The size named at a node; an error there, with the nearest, where there is none such.
  std::optional<JarIndex> read(const yaml::Node& node, checks::ErrorSink sink) const;

 private:
  void load_jar(const yaml::Node& node, const knowledge::Sources& sources, checks::ErrorSink sink);
};

/// A source told as {key:, section:, page:} or in plain words ("common practice").
std::string read_source(const yaml::Node* node, const knowledge::Sources& sources, checks::ErrorSink sink);

/// `read: original | reprint | memory`.
Read read_mark(checks::Fields& fields, Read otherwise);

}  // namespace sealworthy::tested
