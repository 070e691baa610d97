#include "reading/match_strict.hpp"

#include <algorithm>
#include <array>
#include <span>

namespace sealworthy::reading {
namespace {

using tested::TableMethod;

/// The tables that a jar's method is judged by; both kinds of gauge where none is said.
std::span<const TableMethod> tables_for(const JarProcess& jar) {
  static constexpr std::array boiling{TableMethod::boiling_water};
  static constexpr std::array gauges{TableMethod::pressure_dial, TableMethod::pressure_weighted};
  if (jar.method == MethodKind::boiling_water || jar.method == MethodKind::steam) return boiling;
  if (jar.method != MethodKind::pressure) return {};
  if (!jar.gauge) return gauges;
  return std::span(gauges).subspan(*jar.gauge == recipe::Gauge::dial ? 0 : 1, 1);
}

std::optional<recipe::Pack> pack_of(const Reading& reading) {
  if (reading.recipe->pack) return reading.recipe->pack->value;
  return std::nullopt;
}

bool meets(const tested::Needed& needed, const recipe::Process& process) {
  if (needed.step == nullptr || needed.step->not_recommended) return false;
  if (!process.time || process.time->value.low < needed.step->time) return false;
  if (!needed.step->pressure) return true;
  return process.pressure && process.pressure->value.low >= *needed.step->pressure;
}

bool meets_at(const tested::Product& product, const Reading& reading, const JarProcess& jar,
              Altitude altitude) {
  const auto methods = tables_for(jar);
  return !methods.empty() && std::all_of(methods.begin(), methods.end(), [&](TableMethod method) {
    const auto options = reading.tables->needed(product, method, pack_of(reading), *jar.size, altitude);
    return std::any_of(options.begin(), options.end(),
                       [&](const tested::Needed& needed) { return meets(needed, *jar.process); });
  });
}

bool same(const tested::Option& a, const tested::Option& b) {
  return std::equal(a.steps.begin(), a.steps.end(), b.steps.begin(), b.steps.end(),
                    [](const tested::Option::Step& x, const tested::Option::Step& y) {
                      return x.band.from == y.band.from && x.band.to == y.band.to && x.time == y.time &&
                             x.pressure == y.pressure && x.not_recommended == y.not_recommended;
                    });
}

bool same(const tested::Row& a, const tested::Row& b) {
  return a.method == b.method && a.hot == b.hot && a.raw == b.raw && a.jar == b.jar &&
         std::equal(a.options.begin(), a.options.end(), b.options.begin(), b.options.end(),
                    [](const tested::Option& x, const tested::Option& y) { return same(x, y); });
}

}  // namespace

bool same_tables(const tested::Product& a, const tested::Product& b) {
  return std::equal(a.rows.begin(), a.rows.end(), b.rows.begin(), b.rows.end(),
                    [](const tested::Row& x, const tested::Row& y) { return same(x, y); });
}

bool meets(const tested::Product& product, const Reading& reading) {
  if (reading.jars.empty()) return false;
  const auto& judged = reading.altitude.judged;
  return std::all_of(reading.jars.begin(), reading.jars.end(), [&](const JarProcess& jar) {
    if (!jar.size || jar.process == nullptr) return false;
    if (judged.empty()) return meets_at(product, reading, jar, feet(0));
    return std::all_of(judged.begin(), judged.end(),
                       [&](Altitude altitude) { return meets_at(product, reading, jar, altitude); });
  });
}

double demand(const tested::Product& product, const Reading& reading) {
  constexpr double no_boiling_water = 1e6;
  bool boiling = false;
  double longest = 0;
  for (const auto& row : product.rows) {
    boiling = boiling || row.method == TableMethod::boiling_water;
    const bool asked = std::any_of(reading.jars.begin(), reading.jars.end(), [&](const JarProcess& jar) {
      const auto methods = tables_for(jar);
      return jar.size == row.jar && std::find(methods.begin(), methods.end(), row.method) != methods.end();
    });
    for (const auto& option : row.options)
      if (!option.steps.empty())
        longest = std::max(longest, in_minutes(option.steps.front().time) * (asked ? 1000 : 1));
  }
  return longest + (boiling ? 0 : no_boiling_water);
}

bool tables_jars(const tested::Product& product, const Reading& reading) {
  return std::all_of(reading.jars.begin(), reading.jars.end(), [&](const JarProcess& jar) {
    return jar.size && std::any_of(product.rows.begin(), product.rows.end(),
                                   [&](const tested::Row& row) { return row.jar == *jar.size; });
  });
}

}  // namespace sealworthy::reading
