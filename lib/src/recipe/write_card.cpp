#include "recipe/write_card.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "quantity/figures.hpp"
#include "text/one_line.hpp"

namespace sealworthy::recipe {

std::string yaml_scalar(std::string_view original) {
  std::string text = text::one_line(original);
  bool plain = !text.empty();
  for (const char c : text) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    plain = plain && (letter || c == ' ' || c == ',' || c == '.' || c == '/' || c == '(' || c == ')' ||
                      c == '-' || static_cast<unsigned char>(c) >= 0x80);
  }
  if (plain) {
    const char first = text.front();
    plain =
        (first >= 'a' && first <= 'z') || (first >= 'A' && first <= 'Z') || (first >= '0' && first <= '9');
  }
  // Words that YAML reads as no text.
  for (const std::string_view word : {"null", "Null", "NULL", "true", "false", "yes", "no", "none"})
    plain = plain && text != word;
  if (plain) return text;
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + "\"";
}

namespace {

/// "0-1,000 ft", "above 6,000 ft"
std::string altitude(const Interval<Altitude>& range) {
  const auto feet_words = [](Altitude a) { return quantity::grouped(std::round(in_feet(a))); };
  if (std::isinf(range.high.si())) return "above " + feet_words(range.low) + " ft";
  if (range.exact()) return feet_words(range.low) + " ft";
  return feet_words(range.low) + "-" + feet_words(range.high) + " ft";
}

std::string minutes_words(const Interval<Duration>& time) {
  const auto number = [](Duration d) { return quantity::kitchen_number(in_minutes(d)); };
  return time.exact() ? number(time.low) + " minutes"
                      : number(time.low) + "-" + number(time.high) + " minutes";
}
std::string psi_words(const Interval<GaugePressure>& pressure) {
  const auto number = [](GaugePressure p) { return quantity::kitchen_number(in_psi(p)); };
  return pressure.exact() ? number(pressure.low) + " psi"
                          : number(pressure.low) + "-" + number(pressure.high) + " psi";
}
std::string inch_words(const Interval<Headspace>& headspace) {
  const auto number = [](Headspace h) { return quantity::kitchen_number(in_inches(h)); };
  const std::string unit = in_inches(headspace.high) > 1 ? " inches" : " inch";
  if (headspace.exact()) return number(headspace.low) + unit;
  return number(headspace.low) + " to " + number(headspace.high) + unit;
}

/// The card's own words of a figure; of prose, which has none that a card could take, the usual ones.
template <class T, class Words>
std::string figure(const Placed<T>& placed, bool prose, const Words& words) {
  return prose ? words(placed.value) : yaml_scalar(placed.text);
}

std::string jar_list(const std::vector<Placed<quantity::JarText>>& jars) {
  std::string out;
  for (const auto& jar : jars) {
    if (!out.empty()) out += ", ";
    out += jar.value.mouth.empty() ? jar.value.name
                                   : "{size: " + jar.value.name + ", mouth: " + jar.value.mouth + "}";
  }
  return jars.size() == 1 ? out : "[" + out + "]";
}

void add_process(const Process& process, bool prose, std::string& out) {
  std::string lead = "  - ";
  const auto line = [&](std::string_view key, const std::string& value) {
    out += lead + std::string(key) + ": " + value + "\n";
    lead = "    ";
  };
  if (process.method) line("method", yaml_scalar(process.method->value));
  if (process.gauge) line("gauge", process.gauge->value == Gauge::dial ? "dial" : "weighted");
  if (process.pressure) line("pressure", figure(*process.pressure, prose, psi_words));
  if (process.time) line("time", figure(*process.time, prose, minutes_words));
  if (process.altitude) line("altitude", figure(*process.altitude, prose, altitude));
  if (process.headspace) line("headspace", figure(*process.headspace, prose, inch_words));
  if (!process.jars.empty()) line("jars", jar_list(process.jars));
}

void add_ingredient(const IngredientLine& line, std::string& out) {
  const auto each = line.per_jar_of ? line.per_jar_of->value.name : std::string("jar");
  out += "  - " + (line.per_jar ? "each " + each + ": " : "") + yaml_scalar(line.text) + "\n";
}

void add_accepted(const std::vector<Accept>& accepted, std::string& out) {
  if (!accepted.empty()) out += "accept:\n";
  for (const Accept& accept : accepted) {
    out += "  - rule: " + yaml_scalar(accept.rule.value) + "\n    because: " + yaml_scalar(accept.because) +
           "\n";
    if (accept.until) out += "    until: " + std::string(accept.until->text) + "\n";
  }
}

/// What a page left open, for the cook to fill in.
void add_not_found(const Recipe& recipe, std::string& out) {
  const bool jars_by_process = !recipe.processes.empty() && !recipe.processes.front().jars.empty();
  if (!recipe.pack) out += "# pack: not found\n";
  if (recipe.jars.empty() && !jars_by_process) out += "# jars: not found\n";
  if (!recipe.headspace) out += "# headspace: not found\n";
  if (recipe.processes.empty()) out += "# process: not found\n";
  for (const auto& doubt : recipe.doubts) {
    out += "# not clear: " + text::one_line(doubt.text) + "\n#   " + text::one_line(doubt.reason) + "\n";
  }
}

}  // namespace

std::string write_card(const Recipe& recipe) {
  std::string out = "recipe: " + yaml_scalar(recipe.title.value) + "\n";
  if (recipe.follows) out += "follows: " + yaml_scalar(recipe.follows->value) + "\n";
  if (recipe.units == quantity::Units::metric) out += "units: metric\n";
  if (recipe.units == quantity::Units::imperial) out += "units: imperial\n";
  if (recipe.makes) out += "makes: " + yaml_scalar(recipe.makes->text) + "\n";
  out += "ingredients:\n";
  for (const auto& line : recipe.ingredients) add_ingredient(line, out);
  if (recipe.pack) out += recipe.pack->value == Pack::hot ? "pack: hot\n" : "pack: raw\n";
  if (!recipe.jars.empty()) out += "jars: " + jar_list(recipe.jars) + "\n";
  if (recipe.headspace) out += "headspace: " + figure(*recipe.headspace, recipe.prose, inch_words) + "\n";
  if (recipe.prose) add_not_found(recipe, out);
  if (!recipe.processes.empty()) out += "process:\n";
  for (const auto& process : recipe.processes) add_process(process, recipe.prose, out);
  if (!recipe.steps.empty()) out += "steps:\n";
  for (const auto& step : recipe.steps) out += "  - " + yaml_scalar(step.value) + "\n";
  if (recipe.lids) out += "lids: " + yaml_scalar(recipe.lids->value) + "\n";
  add_accepted(recipe.accept, out);
  return out;
}

}  // namespace sealworthy::recipe
