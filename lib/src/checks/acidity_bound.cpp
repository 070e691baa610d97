#include "checks/acidity_bound.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

#include "checks/fields.hpp"
#include "science/card_mixture.hpp"

namespace sealworthy::checks {
namespace {

using foods::AcidClass;
using reading::Reading;
using science::Level;

struct Entry {
  const Rule* rule;
  double limit = 0;
  bool possible = false;
};

Entry read_entry(const Rule& rule, Maker& maker) {
  Fields with(rule.with, "rule " + rule.id + ", with", {rule.file, maker.errors});
  Entry entry{&rule};
  entry.limit = with.number("limit").value_or(0);
  entry.possible = with.choice("level", {"likely", "possible"}, true) == 1;
  with.done();
  if (entry.limit <= 0) with.sink().add(rule.at, "rule " + rule.id + ": 'limit' is missing");
  return entry;
}

/// A change of what is in the jar that is more than a notice: a harmless one (fewer low-acid foods, more
/// salt) leaves the acidity that was measured.
bool changed(const std::vector<Finding>& findings) {
  return std::any_of(findings.begin(), findings.end(), [](const Finding& finding) {
    return finding.severity > Severity::notice &&
           (finding.topic == Topic::change || finding.topic == Topic::ingredient ||
            finding.topic == Topic::acid);
  });
}

/// What is in the jar is what a tested process puts there: its own pH was measured. Where its acid or amounts
/// are only not known, the checks that compare them say so.
bool as_tested(const Reading& reading, const Results& results) {
  if (reading.match.product == nullptr || reading.match.product->no_tested_process) return false;
  bool food = false;
  for (const Point& point : results.points) {
    const bool decides =
        point.kind == PointKind::food || point.kind == PointKind::acid || point.kind == PointKind::amounts;
    if (!decides) continue;
    if (point.state == Point::State::differs &&
        (point.kind != PointKind::amounts || changed(results.findings)))
      return false;
    food = food || (point.kind == PointKind::food && point.state != Point::State::unknown);
  }
  return food;
}

/// Something that is not acid by itself, or that nobody knows.
bool needs_acid(const Reading& reading) {
  return std::any_of(reading.ingredients.begin(), reading.ingredients.end(), [](const auto& line) {
    return line.food == nullptr || line.food->acid_class == AcidClass::low_acid ||
           line.food->acid_class == AcidClass::borderline;
  });
}

bool told_already(const std::vector<Finding>& findings) {
  return std::any_of(findings.begin(), findings.end(), [](const Finding& finding) {
    return finding.severity >= Severity::warning &&
           (finding.topic == Topic::acid || finding.topic == Topic::method);
  });
}

/// No food of the card could be weighed: the figure would be that of water.
bool nothing_weighed(const science::MixturePh& ph) {
  return std::all_of(ph.pulls.begin(), ph.pulls.end(), [](const auto& pull) { return pull.meq == 0; });
}

/// The two foods that take up most acid: "onions and green beans".
std::string drivers(const science::Mixture& mixture, const science::MixturePh& ph) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < mixture.parts.size(); ++i)
    if (ph.pulls[i].meq < 0) order.push_back(i);
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return ph.pulls[a].meq < ph.pulls[b].meq; });
  if (order.empty()) return "the foods";
  std::string words(mixture.parts[order.front()].name);
  if (order.size() > 1) words.append(" and ").append(mixture.parts[order[1]].name);
  return words;
}

std::string joined(std::vector<std::string> names) {
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  return fmt::format("{}", fmt::join(names, ", "));
}

std::string unknown_words(const science::CardMixture& card) {
  std::string words;
  if (!card.by_default.empty())
    words += " No composition is known of " + joined(card.by_default) + ": counted as strongly buffered.";
  if (!card.no_amount.empty())
    words += " Not counted, because it can't be weighed: " + joined(card.no_amount) + ".";
  return words;
}

class AcidityBound final : public Check {
 public:
  AcidityBound(std::span<const Rule* const> rules, Maker& maker) : data_(maker.acidity) {
    for (const Rule* rule : rules) entries_.push_back(read_entry(*rule, maker));
  }

  void run(const Reading& reading, Results& results) const override {
    if (data_ == nullptr || std::none_of(entries_.begin(), entries_.end(), [&](const Entry& entry) {
          return applies(entry.rule->only_if, reading);
        }))
      return;
    if (!needs_acid(reading) || as_tested(reading, results) || told_already(results.findings)) return;
    const auto card = science::mixture_of(reading, *data_);
    if (card.acid_unknown) return;
    const auto ph = science::ph_of(card.mixture, *data_);
    if (!ph || nothing_weighed(*ph)) return;
    for (const Entry& entry : entries_) {
      if (!applies(entry.rule->only_if, reading) || !speaks(entry, *ph)) continue;
      tell(entry, reading, card, *ph, results);
    }
  }

 private:
  static double at(const science::MixturePh& ph, Level level) { return ph.ph[science::index_of(level)]; }

  static bool speaks(const Entry& entry, const science::MixturePh& ph) {
    const bool likely = std::max(at(ph, Level::best), at(ph, Level::bound)) > entry.limit;
    return entry.possible ? !likely && at(ph, Level::strict) > entry.limit : likely;
  }

  static void tell(const Entry& entry, const Reading& reading, const science::CardMixture& card,
                   const science::MixturePh& ph, Results& results) {
    const auto figure = [](double value) { return fmt::format("{:.1f}", value); };
    const double worst = at(ph, entry.possible ? Level::strict : Level::bound);
    results.add(*entry.rule, reading.recipe->title.at,
                {{"best", figure(at(ph, Level::best))},
                 {"bound", figure(at(ph, Level::bound))},
                 {"strict", figure(at(ph, Level::strict))},
                 {"limit", figure(entry.limit)},
                 {"driver", drivers(card.mixture, ph)},
                 {"unknown", unknown_words(card)},
                 {"found", "pH up to " + figure(worst)},
                 {"needed", "pH " + figure(entry.limit) + " or lower"}});
  }

  std::vector<Entry> entries_;
  const science::AcidData* data_;
};

}  // namespace

std::unique_ptr<Check> make_acidity_bound(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<AcidityBound>(rules, maker);
}

}  // namespace sealworthy::checks
