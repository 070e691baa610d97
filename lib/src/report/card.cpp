#include <fmt/format.h>

#include <cmath>

#include "quantity/figures.hpp"
#include "report/understood.hpp"

namespace sealworthy::report {
namespace {

using recipe::Process;

/// A YAML scalar: plain where nothing in it could be read as something else, else in double quotes, on one
/// line.
std::string scalar(std::string_view text) {
  std::string out;
  bool plain = !text.empty() && text.front() != ' ' && text.back() != ' ';
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
  if (plain) return std::string(text);
  out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    const bool blank = static_cast<unsigned char>(c) <= 0x20;
    if (!blank || out.back() != ' ') out += blank ? ' ' : c;
  }
  return out + "\"";
}

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

std::string jar_list(const std::vector<recipe::Placed<quantity::JarText>>& jars) {
  if (jars.size() == 1) return jars.front().value.name;
  std::string out;
  for (const auto& jar : jars) out += (out.empty() ? "[" : ", ") + jar.value.name;
  return out + "]";
}

void add_process(const Process& process, std::string& out) {
  std::string lead = "  - ";
  const auto line = [&](std::string_view key, const std::string& value) {
    out += lead + std::string(key) + ": " + value + "\n";
    lead = "    ";
  };
  if (process.method) line("method", scalar(process.method->value));
  if (process.gauge) line("gauge", process.gauge->value == recipe::Gauge::dial ? "dial" : "weighted");
  if (process.pressure) line("pressure", psi_words(process.pressure->value));
  if (process.time) line("time", minutes_words(process.time->value));
  if (process.altitude) line("altitude", altitude(process.altitude->value));
  if (process.headspace) line("headspace", inch_words(process.headspace->value));
  if (!process.jars.empty()) line("jars", jar_list(process.jars));
}

void add_ingredient(const recipe::IngredientLine& line, std::string& out) {
  out += "  - ";
  if (!line.per_jar) {
    out += scalar(line.text) + "\n";
  } else {
    out += fmt::format("each {}: {}\n", line.per_jar_of ? line.per_jar_of->value.name : "jar",
                       scalar(line.text));
  }
}

}  // namespace

std::string card_of(const recipe::Recipe& recipe) {
  std::string out = "recipe: " + scalar(recipe.title.value) + "\n";
  if (recipe.follows) out += "follows: " + scalar(recipe.follows->value) + "\n";
  if (recipe.units == quantity::Units::metric) out += "units: metric\n";
  if (recipe.units == quantity::Units::imperial) out += "units: imperial\n";
  if (recipe.makes) out += "makes: " + scalar(recipe.makes->text) + "\n";
  out += "ingredients:\n";
  for (const auto& line : recipe.ingredients) add_ingredient(line, out);
  const bool jars_by_process = !recipe.processes.empty() && !recipe.processes.front().jars.empty();
  if (recipe.pack) out += recipe.pack->value == recipe::Pack::hot ? "pack: hot\n" : "pack: raw\n";
  if (!recipe.pack) out += "# pack: not found\n";
  if (!recipe.jars.empty()) out += "jars: " + jar_list(recipe.jars) + "\n";
  if (recipe.jars.empty() && !jars_by_process) out += "# jars: not found\n";
  out += recipe.headspace ? "headspace: " + inch_words(recipe.headspace->value) + "\n"
                          : "# headspace: not found\n";
  for (const auto& doubt : recipe.doubts) {
    std::string words(doubt.text);
    for (char& c : words)
      if (c == '\n' || c == '\r') c = ' ';
    out += "# not clear: " + words + "\n#   " + doubt.reason + "\n";
  }
  if (recipe.processes.empty()) out += "# process: not found\n";
  if (!recipe.processes.empty()) out += "process:\n";
  for (const auto& process : recipe.processes) add_process(process, out);
  if (!recipe.steps.empty()) out += "steps:\n";
  for (const auto& step : recipe.steps) out += "  - " + scalar(step.value) + "\n";
  if (recipe.lids) out += "lids: " + scalar(recipe.lids->value) + "\n";
  return out;
}

}  // namespace sealworthy::report
