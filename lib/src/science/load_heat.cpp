#include "checks/fields.hpp"
#include "science/heat_data.hpp"

namespace sealworthy::science {
namespace {

using checks::ErrorSink;
using checks::Fields;

bool from_memory(Fields& fields) {
  const auto read = fields.choice("read", {"original", "reprint", "memory"});
  return read && *read == 2;
}

const yaml::Node& map_at(Fields& fields, std::string_view key) {
  static const yaml::Node none{};
  const yaml::Node* node = fields.find(key);
  if (node == nullptr) fields.sink().add(fields.at(), "'" + std::string(key) + "' is missing");
  return node == nullptr ? none : *node;
}

double positive(Fields& fields, std::string_view key) {
  const auto value = fields.number(key);
  if (value && *value > 0) return *value;
  fields.sink().add(fields.at(), "'" + std::string(key) + "' must be a number above 0");
  return 1;
}

HeatTarget target(const yaml::Node& node, const char* what, const ErrorSink& sink) {
  Fields fields(node, what, sink);
  HeatTarget target;
  target.germ = fields.text("germ", true);
  target.reference = fahrenheit(positive(fields, "reference-f"));
  target.z = step_fahrenheit(positive(fields, "z-f"));
  target.d = minutes(fields.number("d-minutes").value_or(0));
  target.least = minutes(fields.number("least-minutes").value_or(0));
  target.source = fields.text("source", true);
  target.from_memory = from_memory(fields);
  fields.done();
  return target;
}

NamedLag lag(const yaml::Node& node, const char* what, const ErrorSink& sink) {
  Fields fields(node, what, sink);
  NamedLag lag;
  lag.pint.heating = minutes(positive(fields, "heating-minutes"));
  lag.pint.cooling = minutes(positive(fields, "cooling-minutes"));
  lag.pint.j = positive(fields, "j");
  lag.says = fields.text("says", true);
  fields.done();
  return lag;
}

}  // namespace

void HeatData::load(std::string_view file, const yaml::Document& document,
                    std::vector<foods::LoadError>& errors) {
  const ErrorSink sink{file, errors};
  Fields top(document.root(), "heat", sink);
  Fields heat(map_at(top, "heat"), "heat", sink);
  low_acid = target(map_at(heat, "low-acid"), "low-acid", sink);
  acid = target(map_at(heat, "acid"), "acid", sink);
  heat.done();

  Fields jar(map_at(top, "jar-lag"), "jar-lag", sink);
  thin = lag(map_at(jar, "thin"), "thin", sink);
  thick = lag(map_at(jar, "thick"), "thick", sink);
  hot_start = fahrenheit(positive(jar, "hot-start-f"));
  raw_start = fahrenheit(positive(jar, "raw-start-f"));
  room = fahrenheit(positive(jar, "room-f"));
  lag_source = jar.text("source", true);
  from_memory(jar);
  jar.done();

  Fields air(map_at(top, "air-left"), "air-left", sink);
  air_share = positive(air, "share");
  air_rules = air.list("rules");
  air.text("source", true);
  air.done();
  top.done();
}

}  // namespace sealworthy::science
