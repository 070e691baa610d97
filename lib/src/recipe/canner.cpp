#include "recipe/canner.hpp"

#include <algorithm>
#include <array>
#include <charconv>

#include "quantity/figures.hpp"

namespace sealworthy::recipe {
namespace {

constexpr const char* form = "Write it as {kind: pressure canner, gauge: dial, holds: 7 quart}.";
constexpr int most_layers = 3;

std::string ticked(std::string_view text) { return "`" + std::string(text) + "`"; }

void read_gauge_tested(Canner& canner, const yaml::Entry& entry, Context& context) {
  const std::string_view text = text_of(entry.value, entry.key);
  const auto date = read_date(text);
  if (!date)
    refuse(entry.value.at, "`gauge-tested:` is not a date: " + ticked(text) + ".",
           "Write the year, month and day: 2026-03-14");
  if (context.today && *date > *context.today)
    refuse(entry.value.at, "`gauge-tested:` is in the future: " + ticked(text) + ".",
           "Write the day of the last test that was made.");
  canner.gauge_tested = Placed<Date>{*date, entry.value.at, text};
}

/// "reads 1 psi high", "2 psi low", "none".
void read_gauge_error(Canner& canner, const yaml::Entry& entry, Context& /*context*/) {
  const std::string_view whole = text_of(entry.value, entry.key);
  std::string text = lowered(whole);
  const auto placed = [&](GaugePressure error) {
    canner.gauge_error = Placed<GaugePressure>{error, entry.value.at, whole};
  };
  if (text == "none" || text == "0") return placed({});
  if (text.starts_with("reads ")) text.erase(0, 6);
  const bool high = text.ends_with(" high");
  const bool low = text.ends_with(" low");
  if (high || low) {
    text.erase(text.rfind(' '));
    const auto read = quantity::read_pressure(text);
    if (const auto* range = std::get_if<Interval<GaugePressure>>(&read))
      return placed(high ? range->high : range->high * -1.0);
  }
  refuse(entry.value.at, "`gauge-error:` does not say how far the gauge is off: " + ticked(whole) + ".",
         "Write what the test found: `1 psi high`, `2 psi low` or `none`.");
}

void read_weights(Canner& canner, const yaml::Entry& entry, Context& /*context*/) {
  for (const yaml::Node* item : one_or_several(entry)) {
    const std::string_view text = text_of(*item, entry.key);
    auto weight = quantity::read_pressure(text);
    if (auto* error = std::get_if<quantity::FigureError>(&weight)) refuse(item->at, *error);
    const auto& range = std::get<Interval<GaugePressure>>(weight);
    if (!range.exact()) refuse(item->at, "A weight has one pressure, not a range.", "As in [5 psi, 10 psi].");
    canner.weights.push_back({range.low, item->at, text});
  }
}

void read_largest_pressure(Canner& canner, const yaml::Entry& entry, Context& /*context*/) {
  const auto read = figure(entry, quantity::read_pressure);
  canner.largest_pressure = Placed<GaugePressure>{read.value.low, read.at, read.text};
}

struct HoldOfLayers {
  Placed<Hold> hold;
  bool jars = false;
};

constexpr std::array<Field<HoldOfLayers>, 2> hold_fields{{
    {"jars",
     [](HoldOfLayers& h, const yaml::Entry& e, Context& context) {
       const auto read = figure(e, quantity::read_yield, context.units);
       h.hold = {{read.value, h.hold.value.layers}, read.at, read.text};
       h.jars = true;
     }},
    {"layers",
     [](HoldOfLayers& h, const yaml::Entry& e, Context&) {
       const std::string_view text = text_of(e.value, e.key);
       int layers = 0;
       const auto read = std::from_chars(text.data(), text.data() + text.size(), layers);
       if (read.ec != std::errc() || read.ptr != text.data() + text.size() || layers < 1 ||
           layers > most_layers)
         refuse(e.value.at, "`layers:` can't be " + ticked(text) + ".", "It is 1, 2 or 3.");
       h.hold.value.layers = layers;
     }},
}};

Placed<Hold> read_hold(const yaml::Node& node, std::string_view key, Context& context) {
  if (node.is_map()) {
    HoldOfLayers read;
    read_fields<HoldOfLayers>(node, hold_fields, "what a canner holds", read, context);
    if (!read.jars) refuse(node.at, "This does not say how many jars.", "As in {jars: 18 pint, layers: 2}.");
    return read.hold;
  }
  const std::string_view text = text_of(node, key);
  auto yield = quantity::read_yield(text, context.units);
  if (auto* error = std::get_if<quantity::FigureError>(&yield)) refuse(node.at, *error);
  return {{std::get<quantity::Yield>(std::move(yield)), 1}, node.at, text};
}

bool same_jar(const Hold& a, const Hold& b) {
  return a.jars.jar && b.jars.jar && a.jars.jar->volume == b.jars.jar->volume;
}

void read_holds(Canner& canner, const yaml::Entry& entry, Context& context) {
  for (const yaml::Node* item : one_or_several(entry)) {
    const Placed<Hold> hold = read_hold(*item, entry.key, context);
    for (const auto& before : canner.holds) {
      if (!same_jar(before.value, hold.value)) continue;
      if (before.value.layers == hold.value.layers)
        refuse(
            hold.at,
            "`holds:` tells this jar size twice: " + ticked(before.text) + " and " + ticked(hold.text) + ".",
            "Keep one, or say on how many layers: {jars: 18 pint, layers: 2}.");
      const bool more_layers = hold.value.layers > before.value.layers;
      const auto& lower = more_layers ? before : hold;
      const auto& upper = more_layers ? hold : before;
      if (upper.value.jars.count.high < lower.value.jars.count.high)
        refuse(hold.at, "With more layers the canner can't hold fewer jars.", "Mend one of the two.");
    }
    canner.holds.push_back(hold);
  }
}

void read_rack(Canner& canner, const yaml::Entry& entry, Context& /*context*/) {
  static constexpr std::array<Choice<bool>, 4> choices{
      {{"yes", true}, {"no", false}, {"true", true}, {"false", false}}};
  canner.rack = choose<bool>(entry, choices);
}

constexpr std::array<Field<Canner>, 10> canner_fields{{
    {"kind", [](Canner& c, const yaml::Entry& e, Context&) { c.kind = placed_text(e); }},
    {"gauge", [](Canner& c, const yaml::Entry& e, Context&) { c.gauge = read_gauge(e); }},
    {"gauge-tested", read_gauge_tested},
    {"gauge-error", read_gauge_error},
    {"weights", read_weights},
    {"largest-pressure", read_largest_pressure},
    {"holds", read_holds},
    {"rack", read_rack},
    {"depth", [](Canner& c, const yaml::Entry& e,
                 Context&) { c.depth = read_vessel_size(e, "`depth: 11 inches`, from bottom to rim"); }},
    {"width",
     [](Canner& c, const yaml::Entry& e, Context&) { c.width = read_vessel_size(e, "`width: 12 inches`"); }},
}};

/// What can't be true of one canner.
void refuse_contradictions(const Canner& canner) {
  if (canner.gauge && canner.gauge->value == Gauge::weighted) {
    if (canner.gauge_error)
      refuse(canner.gauge_error->at, "A weighted gauge has no error to find.",
             "Leave `gauge-error:` out, or write `gauge: dial`.");
    if (canner.gauge_tested)
      refuse(canner.gauge_tested->at, "A weighted gauge needs no test.",
             "Leave `gauge-tested:` out, or write `gauge: dial`.");
  }
  if (canner.gauge_error && !canner.gauge)
    refuse(canner.gauge_error->at, "`gauge-error:` needs `gauge: dial`.", "Say which gauge the canner has.");
  if (!canner.largest_pressure) return;
  for (const auto& weight : canner.weights)
    if (weight.value > canner.largest_pressure->value)
      refuse(weight.at,
             "This weight is above the canner's largest pressure, " +
                 quantity::words(canner.largest_pressure->value) + ".",
             "Mend `weights:` or `largest-pressure:`.");
}

}  // namespace

Placed<VesselSize> read_vessel_size(const yaml::Entry& entry, std::string_view example) {
  const std::string_view text = text_of(entry.value, entry.key);
  const auto read = quantity::read_piece_size(text);
  if (std::holds_alternative<quantity::FigureError>(read))
    refuse(entry.value.at, colon_key(entry.key) + " is not a size of a pot or burner: " + ticked(text) + ".",
           "Write it as " + std::string(example) + ".");
  return {VesselSize::from_si(std::get<Interval<PieceSize>>(read).low.si()), entry.value.at, text};
}

std::vector<Canner> read_canners(const yaml::Entry& entry, Context& context) {
  std::vector<Canner> canners;
  for (const yaml::Node* item : one_or_several(entry)) {
    if (!item->is_map())
      refuse(item->at, "`canners:` takes canners, but here it holds " + std::string(kind_words(*item)) + ".",
             form);
    Canner canner;
    canner.at = item->at;
    read_fields<Canner>(*item, canner_fields, "a canner", canner, context);
    if (canner.kind.value.empty()) refuse(item->at, "This canner does not say what kind it is.", form);
    refuse_contradictions(canner);
    canners.push_back(std::move(canner));
  }
  return canners;
}

}  // namespace sealworthy::recipe
