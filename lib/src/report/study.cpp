#include "report/study.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <sealworthy/study.hpp>

#include "quantity/figures.hpp"
#include "report/wrap.hpp"

namespace sealworthy {
namespace {

using Json = nlohmann::ordered_json;
using report::wrap;

int clamped(const TextStyle& style) { return std::clamp(style.width, 40, 100); }

std::string part(std::string_view name, const std::string& text, const TextStyle& style) {
  return wrap(fmt::format("    {:<18}", name), text, 22, clamped(style));
}

std::string degrees(Temperature t) { return fmt::format("{:.1f} F", in_fahrenheit(t)); }

std::string minutes_words(Duration time) {
  const double m = in_minutes(time);
  if (m < 0.01) return "less than 0.01";
  return m >= 10 ? fmt::format("{:.0f}", m) : fmt::format("{:.2g}", m);
}

double rounded(double value, double steps) { return std::round(value * steps) / steps; }
double to_hundredth(double value) { return rounded(value, 100); }
double to_tenth(double value) { return rounded(value, 10); }

std::string altitude_text(const AltitudeStudy& study, const TextStyle& style) {
  std::string out = "  Air and water\n";
  out += part("altitude",
              study.known ? quantity::words(study.altitude) : "not known: worked out for sea level", style);
  out += part(
      "air pressure",
      fmt::format("{:.2f} psi ({:.0f} hPa)", in_pascals(study.air) / unit::psi, in_pascals(study.air) / 100),
      style);
  return out + part("water boils at", degrees(study.boiling), style);
}

std::string effect_text(std::string_view name, const HeatEffect& effect, const HeatStudy& heat,
                        const TextStyle& style) {
  auto words = fmt::format("{}, {}", effect.method, quantity::words(effect.time));
  if (effect.pressure) words += " at " + quantity::words(*effect.pressure);
  words += fmt::format(
      ", {} around the jars: at most {} minutes at {:.0f} F in any part while it is heated; slowest spot, "
      "cooling included, {} (thin) or {} (thick)",
      degrees(effect.around), minutes_words(effect.at_most), in_fahrenheit(heat.reference),
      minutes_words(effect.thin), minutes_words(effect.thick));
  return part(name, words, style);
}

std::string heat_text(const HeatStudy& heat, const TextStyle& style) {
  std::string out = fmt::format("  Heat, {}\n", heat.jar);
  out += part("counted against", heat.germ, style);
  if (heat.least.si() > 0)
    out +=
        part("least given",
             fmt::format("{} minutes at {:.0f} F", minutes_words(heat.least), in_fahrenheit(heat.reference)),
             style);
  out += effect_text("this card", heat.card, heat, style);
  if (heat.log_reductions > 0)
    out += part("", fmt::format("that is a reduction by at most {:.2g} powers of ten", heat.log_reductions),
                style);
  if (heat.tested) out += effect_text("tested process", *heat.tested, heat, style);
  return out + part("source", heat.source + (heat.from_memory ? " (from memory)" : ""), style);
}

std::string grams_words(const Interval<double>& grams) {
  return grams.high - grams.low < 0.5 ? fmt::format("{:.0f} g", grams.high)
                                      : fmt::format("{:.0f} to {:.0f} g", grams.low, grams.high);
}

std::string acidity_text(const Study& study, const TextStyle& style) {
  std::string out = "  Acidity\n";
  if (!study.acidity) return out + part("pH", "can't be worked out: " + study.no_acidity, style);
  const auto& acid = *study.acidity;
  out += part("pH",
              fmt::format("about {:.2f}; bound {:.2f}; strict bound {:.2f} (botulism can grow above {:.1f})",
                          acid.best, acid.bound, acid.strict, acid.limit),
              style);
  for (const auto& one : acid.parts) {
    if (std::abs(one.meq) < 0.05) continue;
    out += part(one.meq < 0 ? "takes acid up" : "gives acid",
                fmt::format("{:.0f} meq  {}, {}{}{}", std::abs(one.meq), one.name, grams_words(one.grams),
                            one.meq < 0 ? fmt::format(", pH {:.1f} by itself", one.own_ph) : "",
                            one.by_default ? ", composition not known: a default" : ""),
                style);
  }
  if (!acid.no_amount.empty())
    out += part("not counted", fmt::format("{} (can't be weighed)", fmt::join(acid.no_amount, ", ")), style);
  return out;
}

Json of(const HeatEffect& effect) {
  return {{"method", effect.method},
          {"minutes", in_minutes(effect.time)},
          {"psi", effect.pressure ? Json(in_psi(*effect.pressure)) : Json(nullptr)},
          {"temperature_f", to_tenth(in_fahrenheit(effect.around))},
          {"f_at_most_minutes", to_hundredth(in_minutes(effect.at_most))},
          {"f_thin_minutes", to_hundredth(in_minutes(effect.thin))},
          {"f_thick_minutes", to_hundredth(in_minutes(effect.thick))}};
}

Json of(const HeatStudy& heat) {
  return {
      {"jar", heat.jar},
      {"germ", heat.germ},
      {"reference_f", to_tenth(in_fahrenheit(heat.reference))},
      {"least_minutes", heat.least.si() > 0 ? Json(to_hundredth(in_minutes(heat.least))) : Json(nullptr)},
      {"log_reductions_at_most",
       heat.log_reductions > 0 ? Json(to_hundredth(heat.log_reductions)) : Json(nullptr)},
      {"card", of(heat.card)},
      {"tested", heat.tested ? of(*heat.tested) : Json(nullptr)},
      {"method", "F by Bigelow's general method; lag of the jar after Ball, a convention of this program"},
      {"source", heat.source},
      {"read", heat.from_memory ? "memory" : "reprint"}};
}

Json of(const AltitudeStudy& study) {
  return {{"altitude_ft", std::round(in_feet(study.altitude))},
          {"altitude_known", study.known},
          {"air_psia", rounded(in_pascals(study.air) / unit::psi, 1000)},
          {"boiling_point_f", to_tenth(in_fahrenheit(study.boiling))},
          {"method", "standard atmosphere; saturation of steam"},
          {"source", "US Standard Atmosphere 1976; IAPWS R7-97(2012), region 4"}};
}

Json of(const AcidityStudy& acid) {
  Json json{{"ph", to_hundredth(acid.best)},
            {"ph_bound", to_hundredth(acid.bound)},
            {"ph_strict_bound", to_hundredth(acid.strict)},
            {"parts", Json::array()},
            {"not_counted", acid.no_amount},
            {"method", "charge balance over weak acids; activity after Davies"},
            {"source", "rules/science"}};
  for (const auto& one : acid.parts) {
    json["parts"].push_back({{"food", one.name},
                             {"grams", {to_tenth(one.grams.low), to_tenth(one.grams.high)}},
                             {"own_ph", to_hundredth(one.own_ph)},
                             {"gives_meq", to_tenth(one.meq)},
                             {"by_default", one.by_default}});
  }
  return json;
}

constexpr std::string_view caution =
    "This explains; it is no process, and no time, pressure or amount may be taken from it. Only a published "
    "process, "
    "or a process authority, can tell whether a recipe is safe.";

}  // namespace

Json report::science_json(const Study& study) {
  Json json{{"altitude", study.altitude ? of(*study.altitude) : Json(nullptr)}, {"heat", Json::array()}};
  for (const auto& heat : study.heat) json["heat"].push_back(of(heat));
  json["acidity"] = study.acidity ? of(*study.acidity) : Json(nullptr);
  if (!study.acidity) json["no_acidity"] = study.no_acidity;
  return json;
}

std::string study_text(const RecipeReport& report, const TextStyle& style) {
  std::string out = wrap("", caution, 0, clamped(style)) + "\n";
  out += wrap("", fmt::format("{}: {}", report.title, to_string(report.verdict)), 2, clamped(style));
  if (!report.study) return out;
  const Study& study = *report.study;
  if (study.altitude) out += altitude_text(*study.altitude, style);
  for (const auto& heat : study.heat) out += heat_text(heat, style);
  return out + acidity_text(study, style);
}

std::string study_json(std::span<const RecipeReport> reports) {
  Json json{{"caution", caution}, {"recipes", Json::array()}};
  for (const auto& report : reports) {
    json["recipes"].push_back(
        {{"path", report.path},
         {"document", report.document},
         {"title", report.title},
         {"verdict", to_string(report.verdict)},
         {"science", report.study ? report::science_json(*report.study) : Json(nullptr)}});
  }
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace sealworthy
