#include "tested/altitude_rules.hpp"

#include <charconv>
#include <limits>

#include "tested/load_context.hpp"

namespace sealworthy::tested {
namespace {

Band band_at(checks::Fields& fields, std::string_view key) {
  const auto* node = fields.find(key);
  if (node == nullptr) return {};
  if (const auto band = read_band(node->text)) return *band;
  fields.sink().add(node->at, "'" + std::string(node->text) + "' is no altitude band",
                    "write one like 1001-3000 or 6001+, in feet");
  return {};
}

Duration time_at(checks::Fields& fields, std::string_view key) {
  const auto* node = fields.find(key);
  if (node == nullptr) return {};
  const auto read = quantity::read_time(node->text);
  if (const auto* time = std::get_if<Interval<Duration>>(&read)) return time->low;
  const auto& error = std::get<quantity::FigureError>(read);
  fields.sink().add(node->at, error.message, error.suggestion);
  return {};
}

std::vector<double> figures(const yaml::Node& list, checks::ErrorSink sink) {
  std::vector<double> out;
  for (const auto& item : list.items) {
    if (const auto figure = read_figure(item.text))
      out.push_back(*figure);
    else
      sink.add(item.at, "'" + std::string(item.text) + "' is no figure");
  }
  return out;
}

std::vector<Band> bands(const yaml::Node* list, checks::ErrorSink sink) {
  std::vector<Band> out;
  if (list != nullptr)
    for (const auto& item : list->items) {
      if (const auto band = read_band(item.text))
        out.push_back(*band);
      else
        sink.add(item.at, "'" + std::string(item.text) + "' is no altitude band");
    }
  return out;
}

AdviceAbove read_advice(const yaml::Node& node, const knowledge::Sources& sources, checks::ErrorSink sink) {
  checks::Fields fields(node, "advice", sink);
  AdviceAbove advice;
  const auto method = fields.choice("method", method_words, true);
  if (method) advice.method = static_cast<TableMethod>(*method);
  advice.band = band_at(fields, "band");
  if (const auto psi = fields.number("psi-at-lowest")) advice.at_lowest = psi_gauge(*psi);
  if (const auto psi = fields.number("psi")) advice.pressure = psi_gauge(*psi);
  if (const auto added = fields.number("add-minutes")) advice.added = minutes(*added);
  advice.body = fields.text("body", true);
  advice.source = read_source(fields.find("source"), sources, sink);
  advice.read = read_mark(fields, Read::reprint);
  fields.done();
  return advice;
}

SteamRule read_steam(const yaml::Node& node, const knowledge::Sources& sources, checks::ErrorSink sink) {
  checks::Fields fields(node, "steam", sink);
  SteamRule steam;
  steam.longest = time_at(fields, "longest");
  const auto bits = fields.choices("classes", class_words);
  for (unsigned i = 0; i < class_words.size(); ++i)
    if ((bits >> i & 1U) != 0) steam.classes.push_back(static_cast<ProductClass>(i));
  steam.source = read_source(fields.find("source"), sources, sink);
  steam.read = read_mark(fields, Read::reprint);
  fields.done();
  return steam;
}

TableForm read_form(const yaml::Node& node, checks::ErrorSink sink) {
  checks::Fields fields(node, "checks", sink);
  TableForm form;
  form.longest = time_at(fields, "longest");
  if (const auto* list = fields.find("boiling-water-bands-from"))
    for (const double figure : figures(*list, sink)) form.boiling_from.push_back(feet(figure));
  form.dial_bands = bands(fields.find("dial-bands"), sink);
  form.dial_at_least = static_cast<std::size_t>(fields.number("dial-bands-at-least").value_or(1));
  if (const auto* list = fields.find("dial-lowest-psi")) form.dial_lowest = figures(*list, sink);
  form.dial_rise = fields.number("dial-rise").value_or(0);
  form.dial_above_weight = fields.number("dial-above-weight").value_or(0);
  form.weighted_bands = bands(fields.find("weighted-bands"), sink);
  if (const auto* list = fields.find("weighted-psi"))
    for (const auto& item : list->items) form.weighted_psi.push_back(figures(item, sink));
  fields.done();
  return form;
}

}  // namespace

std::optional<double> read_figure(std::string_view text) {
  double value = 0;
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, value);
  return read.ec == std::errc() && read.ptr == end ? std::optional(value) : std::nullopt;
}

std::optional<Band> read_band(std::string_view text) {
  constexpr double open = std::numeric_limits<double>::infinity();
  if (text.ends_with('+')) {
    const auto from = read_figure(text.substr(0, text.size() - 1));
    return from ? std::optional(Band{feet(*from), Altitude::from_si(open)}) : std::nullopt;
  }
  const auto dash = text.find('-', 1);
  if (dash == std::string_view::npos) return std::nullopt;
  const auto from = read_figure(text.substr(0, dash));
  const auto to = read_figure(text.substr(dash + 1));
  return from && to ? std::optional(Band{feet(*from), feet(*to)}) : std::nullopt;
}

void AltitudeRules::load(const yaml::Document& document, const knowledge::Sources& sources,
                         checks::ErrorSink sink) {
  checks::Fields root(document.root(), "altitude", sink);
  if (const auto* node = root.find("bands")) {
    checks::Fields fields(*node, "bands", sink);
    if (const auto* highest = fields.find("highest-open")) {
      const auto read = quantity::read_altitude(highest->text);
      if (const auto* altitude = std::get_if<Interval<Altitude>>(&read))
        highest_open = altitude->high;
      else
        sink.add(highest->at, std::get<quantity::FigureError>(read).message);
    }
    fields.done();
  }
  if (const auto* node = root.find("advice"))
    for (const auto& item : node->items) advice.push_back(read_advice(item, sources, sink));
  if (const auto* node = root.find("steam")) steam = read_steam(*node, sources, sink);
  if (const auto* node = root.find("checks")) form = read_form(*node, sink);
  root.done();
}

}  // namespace sealworthy::tested
