#include <array>

#include "recipe/fields.hpp"

namespace sealworthy::recipe {
namespace {

struct SizeAndMouth {
  std::optional<Placed<quantity::JarText>> size;
  std::string mouth;
};

std::vector<JarsSaid> read_sizes(const yaml::Node& value, std::string_view key, const Context& context) {
  const std::string_view text = text_of(value, key);
  auto sizes = quantity::read_jars(text, context.units);
  if (auto* error = std::get_if<quantity::FigureError>(&sizes)) refuse(value.at, *error);
  std::vector<JarsSaid> said;
  for (auto& size : std::get<0>(sizes)) said.push_back({{std::move(size.jar), value.at, text}, size.count});
  return said;
}

Placed<quantity::JarText> read_size(const yaml::Node& value, std::string_view key, const Context& context) {
  const std::string_view text = text_of(value, key);
  auto size = quantity::read_jar(text, context.units);
  if (auto* error = std::get_if<quantity::FigureError>(&size)) refuse(value.at, *error);
  return {std::get<quantity::JarText>(std::move(size)), value.at, text};
}

void read_mouth(SizeAndMouth& jar, const yaml::Entry& entry, Context& /*context*/) {
  static constexpr std::array<Choice<std::string_view>, 4> choices{
      {{"wide", "wide"}, {"regular", "regular"}, {"wide mouth", "wide"}, {"regular mouth", "regular"}}};
  jar.mouth = choose<std::string_view>(entry, choices).value;
}

constexpr std::array<Field<SizeAndMouth>, 2> jar_fields{{
    {"size",
     [](SizeAndMouth& jar, const yaml::Entry& e, Context& c) { jar.size = read_size(e.value, e.key, c); }},
    {"mouth", read_mouth},
}};

/// `{size: quart, mouth: wide}`
Placed<quantity::JarText> read_jar_map(const yaml::Node& map, Context& context) {
  SizeAndMouth jar;
  read_fields<SizeAndMouth>(map, jar_fields, "a jar", jar, context);
  if (!jar.size) refuse(map.at, "This jar has no size.", "Write it as {size: quart, mouth: wide}.");
  std::string& mouth = jar.size->value.mouth;
  if (!mouth.empty() && !jar.mouth.empty() && mouth != jar.mouth)
    refuse(map.at, "The mouth of this jar is called both " + mouth + " and " + jar.mouth + ".",
           "Keep the right one.");
  if (!jar.mouth.empty()) mouth = jar.mouth;
  return *jar.size;
}

constexpr std::array<Field<Process>, 7> process_fields{{
    {"method", [](Process& p, const yaml::Entry& e, Context&) { p.method = placed_text(e); }},
    {"gauge", [](Process& p, const yaml::Entry& e, Context&) { p.gauge = read_gauge(e); }},
    {"pressure",
     [](Process& p, const yaml::Entry& e, Context&) { p.pressure = figure(e, quantity::read_pressure); }},
    {"time", [](Process& p, const yaml::Entry& e, Context&) { p.time = figure(e, quantity::read_time); }},
    {"altitude", [](Process& p, const yaml::Entry& e,
                    Context& c) { p.altitude = figure(e, quantity::read_altitude, c.units); }},
    {"jars", [](Process& p, const yaml::Entry& e, Context& c) { p.jars = read_jar_sizes(e, c); }},
    {"headspace",
     [](Process& p, const yaml::Entry& e, Context&) { p.headspace = figure(e, quantity::read_headspace); }},
}};

Process read_process(const yaml::Node& map, Context& context) {
  if (!map.is_map())
    refuse(
        map.at,
        "`process:` holds " + std::string(kind_words(map)) + "; how it is processed must be told in parts.",
        "Write `method:`, `time:` and so on, each on a line of its own below `process:`, indented by two "
        "spaces.");
  if (map.entries.empty())
    refuse(map.at, "`process:` says nothing.", "Write `method:`, `time:` and so on, or leave it out.");
  Process process;
  process.at = map.at;
  read_fields<Process>(map, process_fields, "`process:`", process, context);
  return process;
}

}  // namespace

std::vector<JarsSaid> read_jars(const yaml::Entry& entry, Context& context) {
  std::vector<JarsSaid> jars;
  for (const yaml::Node* item : one_or_several(entry)) {
    if (item->is_map()) {
      jars.push_back({read_jar_map(*item, context), std::nullopt});
      continue;
    }
    for (auto& said : read_sizes(*item, entry.key, context)) jars.push_back(std::move(said));
  }
  return jars;
}

std::vector<Placed<quantity::JarText>> read_jar_sizes(const yaml::Entry& entry, Context& context) {
  std::vector<Placed<quantity::JarText>> sizes;
  for (auto& said : read_jars(entry, context)) sizes.push_back(std::move(said.jar));
  return sizes;
}

std::vector<Process> read_processes(const yaml::Entry& entry, Context& context) {
  std::vector<Process> processes;
  for (const yaml::Node* item : one_or_several(entry)) processes.push_back(read_process(*item, context));
  return processes;
}

}  // namespace sealworthy::recipe
