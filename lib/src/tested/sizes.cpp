#include "tested/sizes.hpp"

#include <algorithm>
#include <cmath>

#include "text/nearest.hpp"

namespace sealworthy::tested {
namespace {

/// Volumes of jars are told to a whole ounce or millilitre.
bool same_volume(Volume a, Volume b) { return std::abs(a / b - 1) < 0.005; }

std::optional<Headspace> read_inches(const yaml::Node& node, checks::ErrorSink sink) {
  const auto read = quantity::read_headspace(node.text);
  if (const auto* headspace = std::get_if<Interval<Headspace>>(&read)) return headspace->low;
  const auto& error = std::get<quantity::FigureError>(read);
  sink.add(node.at, error.message, error.suggestion);
  return std::nullopt;
}

}  // namespace

std::string read_source(const yaml::Node* node, const knowledge::Sources& sources, checks::ErrorSink sink) {
  if (node == nullptr) return {};
  if (node->is_scalar()) return std::string(node->text);
  return sources.cite(*node, sink.file, sink.errors);
}

Read read_mark(checks::Fields& fields, Read otherwise) {
  static const std::vector<std::string_view> words{"original", "reprint", "memory"};
  const auto index = fields.choice("read", words);
  return index ? static_cast<Read>(*index) : otherwise;
}

void Sizes::load_jar(const yaml::Node& node, const knowledge::Sources& sources, checks::ErrorSink sink) {
  checks::Fields fields(node, "jar", sink);
  JarSize jar;
  jar.id = fields.text("id", true);
  jar.name = fields.text("name", true);
  jar.plural = fields.text("plural", true);
  jar.volume = us_fluid_ounces(fields.number("fluid-ounces").value_or(0));
  read_source(fields.find("source"), sources, sink);
  read_mark(fields, Read::reprint);
  fields.find("counts-as");  // read once every size is known
  fields.done();
  if (jar.volume <= Volume{})
    sink.add(node.at, "jar " + jar.id + ": 'fluid-ounces' is missing");
  else if (!jars.empty() && jar.volume <= jars.back().volume)
    sink.add(node.at, "jar " + jar.id + ": the smaller sizes come first");
  if (find(jar.id)) sink.add(node.at, "jar " + jar.id + " stands here twice");
  jars.push_back(std::move(jar));
}

void Sizes::load(const yaml::Document& document, const knowledge::Sources& sources, checks::ErrorSink sink) {
  checks::Fields root(document.root(), "jars", sink);
  const auto* list = root.find("jars");
  const auto first = jars.size();
  for (const auto& node : list->items) load_jar(node, sources, sink);
  for (std::size_t i = 0; i < list->items.size(); ++i)
    if (const auto* larger = list->items[i].find("counts-as"))
      jars[first + i].counts_as = read(*larger, sink);
  if (const auto* node = root.find("metric"))
    for (const auto& item : node->items) {
      checks::Fields fields(item, "metric jar", sink);
      const auto volume = millilitres(fields.number("millilitres").value_or(0));
      read_source(fields.find("source"), sources, sink);
      const auto* size = fields.find("counts-as");
      fields.done();
      if (const auto jar = size != nullptr ? read(*size, sink) : std::nullopt)
        metric.emplace_back(volume, *jar);
    }
  if (const auto* node = root.find("imperial")) {
    checks::Fields fields(*node, "imperial jars", sink);
    read_source(fields.find("source"), sources, sink);
    fields.done();
  }
  if (const auto* node = root.find("headspaces"))
    for (const auto& item : node->items)
      if (const auto inches = read_inches(item, sink)) headspaces.push_back(*inches);
  root.done();
}

std::optional<JarIndex> Sizes::find(std::string_view id) const {
  for (std::size_t i = 0; i < jars.size(); ++i)
    if (jars[i].id == id) return static_cast<JarIndex>(i);
  return std::nullopt;
}

std::optional<JarIndex> Sizes::of(const quantity::JarText& jar) const {
  if (jar.metric)
    for (const auto& [volume, index] : metric)
      if (same_volume(jar.volume, volume)) return index;
  for (std::size_t i = 0; i < jars.size(); ++i)
    if (jar.volume <= jars[i].volume || same_volume(jar.volume, jars[i].volume))
      return static_cast<JarIndex>(i);
  return std::nullopt;
}

std::optional<JarIndex> Sizes::read(const yaml::Node& node, checks::ErrorSink sink) const {
  if (const auto index = find(node.text)) return index;
  std::vector<std::string_view> ids;
  for (const auto& jar : jars) ids.emplace_back(jar.id);
  const auto near = text::nearest(node.text, ids);
  sink.add(node.at, "no such jar as '" + std::string(node.text) + "' in rules/jars.yaml",
           near ? "did you mean '" + std::string(*near) + "'?" : "");
  return std::nullopt;
}

}  // namespace sealworthy::tested
