#include "checks/against_table.hpp"

#include <algorithm>
#include <array>
#include <boost/container/small_vector.hpp>

#include "quantity/figures.hpp"
#include "reading/jars.hpp"

namespace sealworthy::checks {
namespace {

using reading::JarProcess;
using tested::Needed;

/// Figures that went through another unit and back still count as equal.
constexpr double rounding = 1e-6;

bool at_least(double value, double wanted) { return value >= wanted * (1 - rounding); }

bool time_met(const JarProcess& jar, const tested::Option::Step& step) {
  const auto& time = jar.process->time;
  return !time || at_least(time->value.low.si(), step.time.si());
}

bool pressure_met(const JarProcess& jar, const tested::Option::Step& step) {
  const auto& pressure = jar.process->pressure;
  return !step.pressure || !pressure || at_least(pressure->value.low.si(), step.pressure->si());
}

int rank(const Judged& judged) {
  if (judged.pressure && judged.time) return judged.step->read == Read::memory ? 2 : 3;
  return judged.pressure ? 1 : 0;
}

/// True if `a` is nearer to the card than `b`.
bool nearer(const Judged& a, const Judged& b) {
  if (b.tabled == nullptr) return true;
  if (rank(a) != rank(b)) return rank(a) > rank(b);
  if (a.pressure) return a.step->time < b.step->time;
  if (a.time != b.time) return a.time;
  return a.step->pressure < b.step->pressure;
}

Judged compare_with(const JarProcess& jar, const Needed& tabled, Altitude height) {
  Judged judged{&tabled, tabled.option->at(height), false, false, true};
  if (judged.step == nullptr) {
    judged.published = false;
    judged.step = &tabled.option->steps.back();
  }
  judged.time = time_met(jar, *judged.step);
  judged.pressure = pressure_met(jar, *judged.step);
  return judged;
}

}  // namespace

bool takes_pack(const tested::Row& row, recipe::Pack pack) {
  return (pack == recipe::Pack::hot ? row.hot : row.raw) || (!row.hot && !row.raw);
}

Judged judge(const JarProcess& jar, Altitude height, const Choice& choice) {
  Judged best;
  bool published = false;
  if (jar.process == nullptr) return best;
  for (const Needed& tabled : jar.tabled) {
    if (choice.pack && !takes_pack(*tabled.row, *choice.pack)) continue;
    if (choice.method && tabled.row->method != *choice.method) continue;
    const Judged judged = compare_with(jar, tabled, height);
    published = published || judged.published;
    if (judged.step->not_recommended) continue;
    if (nearer(judged, best)) best = judged;
  }
  best.published = published;
  return best;
}

Choice card_choice(const reading::Reading& reading, const JarProcess& jar) {
  if (!reading.recipe->pack) return {};
  const recipe::Pack pack = reading.recipe->pack->value;
  const bool tabled = std::any_of(jar.tabled.begin(), jar.tabled.end(),
                                  [&](const Needed& n) { return takes_pack(*n.row, pack); });
  return tabled ? Choice{pack, {}} : Choice{};
}

std::span<const Altitude> heights_of(const JarProcess& jar) {
  static constexpr std::array lowest{feet(0)};
  if (jar.heights.empty()) return lowest;
  return jar.heights;
}

std::optional<Altitude> holds_up_to(const JarProcess& jar, const Choice& choice,
                                    const tested::Tables& tables) {
  boost::container::small_vector<Altitude, 16> tops;
  for (const Needed& tabled : jar.tabled) {
    for (const tested::Option::Step& step : tabled.option->steps)
      tops.push_back(std::min(step.band.to, tables.highest_open()));
  }
  std::sort(tops.begin(), tops.end());
  std::optional<Altitude> highest;
  for (const Altitude& top : tops) {
    if (highest == top) continue;
    if (!judge(jar, top, choice).met()) break;
    highest = top;
  }
  return highest;
}

bool has_method_rows(const reading::Reading& reading, const JarProcess& jar) {
  if (reading.match.product == nullptr) return false;
  const auto methods = reading::table_methods(jar);
  const auto& rows = reading.match.product->rows;
  return std::any_of(rows.begin(), rows.end(),
                     [&](const tested::Row& row) { return methods.has(row.method); });
}

std::string jar_words(const JarProcess& jar) {
  return jar.jar == nullptr ? std::string("jars") : jar.jar->name + " jars";
}

std::string of_words(const reading::Reading& reading) {
  return reading.match.doubtful ? " of \"" + reading.match.product->title + "\"" : std::string();
}

std::string at_words(const JarProcess& jar, Altitude at) {
  return jar.heights.empty() ? std::string() : " at " + quantity::words(at);
}

std::string step_words(const tested::Option::Step& step) {
  std::string words = quantity::words(step.time);
  if (step.pressure) words += " at " + quantity::words(*step.pressure);
  return words;
}

std::string jar_size_words(const tested::Tables& tables, tested::JarIndex jar) {
  return tables.jars()[static_cast<std::size_t>(jar)].name;
}

void cite_row(Finding& finding, const Judged& judged) {
  std::string source = judged.tabled->row->source;
  if (judged.step->read == Read::memory) source += " (from memory)";
  finding.sources.insert(finding.sources.begin(), std::move(source));
}

Position process_at(const reading::Reading& reading, const JarProcess& jar) {
  return jar.process != nullptr ? jar.process->at : reading.recipe->process_or_title();
}

}  // namespace sealworthy::checks
