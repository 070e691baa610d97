#include <algorithm>
#include <cmath>

#include "quantity/figures.hpp"
#include "tested/load_rows.hpp"

namespace sealworthy::tested {
namespace {

using Steps = std::vector<Option::Step>;

bool same(const Band& a, const Band& b) { return a.from == b.from && a.to == b.to; }

/// Bands begin one foot over the one before.
bool follows(const Band& before, const Band& after) {
  return std::abs((after.from - before.to) / feet(1) - 1) < 0.01;
}

bool joined(const Steps& steps) {
  if (steps.empty() || steps.front().band.from != feet(0)) return false;
  for (const auto& step : steps)
    if (step.band.to <= step.band.from) return false;
  for (std::size_t i = 1; i < steps.size(); ++i)
    if (!follows(steps[i - 1].band, steps[i].band)) return false;
  return true;
}

bool is_open(const Band& band) { return std::isinf(band.to.si()); }

void check_boiling(const Steps& steps, Position at, const LoadContext& context) {
  if (!is_open(steps.back().band))
    context.wrong(Printed::bands, at, "the highest band of a boiling-water row must be open (\"6001+\")");
  for (const auto& step : steps) {
    const auto& edges = context.form.boiling_from;
    if (std::find(edges.begin(), edges.end(), step.band.from) == edges.end())
      context.wrong(Printed::bands, at,
                    "no boiling-water band begins at " + quantity::words(step.band.from) + " in the tables");
  }
  for (std::size_t i = 1; i < steps.size(); ++i)
    if (steps[i].time < steps[i - 1].time)
      context.wrong(Printed::times, at, "the time falls as the altitude rises");
}

void check_dial(const Steps& steps, Position at, const LoadContext& context) {
  const auto& form = context.form;
  const auto& bands = form.dial_bands;
  bool good = steps.size() >= form.dial_at_least && steps.size() <= bands.size();
  for (std::size_t i = 0; good && i < steps.size(); ++i) good = same(steps[i].band, bands[i]);
  if (!good) context.wrong(Printed::bands, at, "the bands of a dial gauge are not those of the tables");
  const auto psi = [&](std::size_t i) { return steps[i].pressure ? in_psi(*steps[i].pressure) : 0; };
  bool right = std::any_of(form.dial_lowest.begin(), form.dial_lowest.end(),
                           [&](double lowest) { return std::abs(psi(0) - lowest) < 0.01; });
  for (std::size_t i = 1; i < steps.size(); ++i)
    right = right && std::abs(psi(i) - psi(i - 1) - form.dial_rise) < 0.01;
  if (!right)
    context.add(at, "the pressures of a dial gauge do not rise from band to band as the tables' do");
}

void check_weighted(const Steps& steps, Position at, const LoadContext& context) {
  const auto& form = context.form;
  bool good = steps.size() == form.weighted_bands.size();
  for (std::size_t i = 0; good && i < steps.size(); ++i) good = same(steps[i].band, form.weighted_bands[i]);
  if (!good) context.wrong(Printed::bands, at, "the bands of a weighted gauge are not those of the tables");
  std::vector<double> psi;
  for (const auto& step : steps)
    if (step.pressure) psi.push_back(std::round(in_psi(*step.pressure) * 100) / 100);
  const auto fits = [&](const std::vector<double>& printed) {
    return psi == printed || (steps.size() == 1 && !psi.empty() && psi.front() == printed.front());
  };
  if (std::none_of(form.weighted_psi.begin(), form.weighted_psi.end(), fits))
    context.add(at, "the pressures of a weighted gauge are not those that weights have");
}

/// Pressure at the lowest band; 0 for boiling water.
double lowest_psi(const Option& option) {
  return option.steps.empty() || !option.steps.front().pressure ? 0 : in_psi(*option.steps.front().pressure);
}

/// The same choice for another jar or gauge: pressure tables pair by the lowest pressure.
const Option* like(const Row& row, double psi) {
  for (const auto& option : row.options)
    if (std::abs(lowest_psi(option) - psi) < 0.01) return &option;
  return nullptr;
}

bool shorter(const Option& larger, const Option& smaller) {
  return std::any_of(smaller.steps.begin(), smaller.steps.end(), [&](const Option::Step& step) {
    const auto* other = larger.at(step.band.from);
    return other == nullptr || other->time < step.time;
  });
}

bool same_packs(const Row& a, const Row& b) {
  return (a.hot && b.hot) || (a.raw && b.raw) || (!a.hot && !a.raw && !b.hot && !b.raw);
}

void compare_jars(const Row& smaller, const Row& larger, Position at, const LoadContext& context) {
  for (const auto& option : smaller.options) {
    const auto* other = like(larger, lowest_psi(option));
    if (other != nullptr && shorter(*other, option))
      context.wrong(Printed::jar_times, at,
                    "the time for " + context.sizes.jars[static_cast<std::size_t>(larger.jar)].plural +
                        " is shorter than for " +
                        context.sizes.jars[static_cast<std::size_t>(smaller.jar)].plural);
  }
}

void compare_gauges(const Row& dial, const Row& weighted, Position at, const LoadContext& context) {
  for (const auto& option : dial.options) {
    const auto* other = like(weighted, lowest_psi(option) - context.form.dial_above_weight);
    if (other != nullptr && other->steps.front().time != option.steps.front().time)
      context.wrong(Printed::gauge_times, at,
                    "the dial and the weighted row of like pressure differ in time");
  }
}

}  // namespace

void check_bands(const Row& row, const Option& option, Position at, const LoadContext& context) {
  if (option.steps.empty()) return;
  if (!joined(option.steps)) {
    context.add(at, "the altitude bands must begin at 0 and follow each other without gap or overlap");
    return;
  }
  switch (row.method) {
    case TableMethod::boiling_water:
      return check_boiling(option.steps, at, context);
    case TableMethod::pressure_dial:
      return check_dial(option.steps, at, context);
    case TableMethod::pressure_weighted:
      return check_weighted(option.steps, at, context);
  }
}

void check_rows(const std::vector<Row>& rows, const std::vector<Position>& places,
                const LoadContext& context) {
  for (std::size_t i = 0; i < rows.size(); ++i)
    for (std::size_t j = 0; j < rows.size(); ++j) {
      const Row& a = rows[i];
      const Row& b = rows[j];
      if (i == j || a.applies_to != b.applies_to || !same_packs(a, b)) continue;
      if (a.method == b.method && a.jar == b.jar && i < j)
        context.add(places[j], "a row for this method, pack and jar stands above already");
      if (a.method == b.method && a.jar < b.jar) compare_jars(a, b, places[j], context);
      if (a.method == TableMethod::pressure_dial && b.method == TableMethod::pressure_weighted &&
          a.jar == b.jar)
        compare_gauges(a, b, places[j], context);
    }
}

}  // namespace sealworthy::tested
