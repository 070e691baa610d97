#include "checks/pack_against_table.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "checks/against_table.hpp"
#include "checks/cases.hpp"

namespace sealworthy::checks {
namespace {

using reading::JarProcess;
using reading::Reading;
using recipe::Pack;
using tested::Needed;
using State = Point::State;

enum class Case { raw_not_tabled, hot_not_tabled, unsaid_one, unsaid_differ, raw };
const std::vector<std::string_view> case_names{"raw-not-tabled", "hot-not-tabled", "unsaid-one",
                                               "unsaid-differ", "raw"};

std::string pack_words(Pack pack) { return pack == Pack::hot ? "hot pack" : "raw pack"; }

bool same_steps(const tested::Option& a, const tested::Option& b) {
  return std::equal(a.steps.begin(), a.steps.end(), b.steps.begin(), b.steps.end(),
                    [](const tested::Option::Step& x, const tested::Option::Step& y) {
                      return x.band.to == y.band.to && x.time == y.time && x.pressure == y.pressure &&
                             x.not_recommended == y.not_recommended;
                    });
}

/// True if what is tabled for one pack is tabled for the other too, figure by figure.
bool covered(const std::vector<Needed>& tabled, Pack pack, Pack other) {
  return std::all_of(tabled.begin(), tabled.end(), [&](const Needed& a) {
    if (!takes_pack(*a.row, pack)) return true;
    return std::any_of(tabled.begin(), tabled.end(), [&](const Needed& b) {
      return takes_pack(*b.row, other) && a.row->method == b.row->method && a.row->jar == b.row->jar &&
             a.row->applies_to == b.row->applies_to && same_steps(*a.option, *b.option);
    });
  });
}

class PackAgainstTable final : public Check {
 public:
  PackAgainstTable(std::span<const Rule* const> rules, Maker& maker) : cases_(rules, maker, case_names) {}

  void run(const Reading& reading, Results& results) const override {
    for (const JarProcess& jar : reading.jars) {
      if (jar.tabled.empty()) {
        results.point(PointKind::pack, State::unknown);
      } else if (reading.recipe->pack) {
        said(reading, jar, reading.recipe->pack->value, results);
      } else {
        unsaid(reading, jar, results);
      }
    }
  }

 private:
  static bool tabled_for(const JarProcess& jar, Pack pack) {
    return std::any_of(jar.tabled.begin(), jar.tabled.end(),
                       [&](const Needed& needed) { return takes_pack(*needed.row, pack); });
  }

  void said(const Reading& reading, const JarProcess& jar, Pack pack, Results& results) const {
    if (tabled_for(jar, pack)) {
      results.point(PointKind::pack, State::held, pack_words(pack), pack_words(pack));
      if (pack == Pack::raw) tell(Case::raw, reading, jar, pack_words(pack), pack_words(pack), results);
      return;
    }
    const Pack other = pack == Pack::hot ? Pack::raw : Pack::hot;
    results.point(PointKind::pack, State::differs, pack_words(pack), pack_words(other));
    tell(pack == Pack::raw ? Case::raw_not_tabled : Case::hot_not_tabled, reading, jar, pack_words(pack),
         pack_words(other), results);
  }

  void unsaid(const Reading& reading, const JarProcess& jar, Results& results) const {
    const bool hot = tabled_for(jar, Pack::hot);
    const bool raw = tabled_for(jar, Pack::raw);
    if (hot && raw && covered(jar.tabled, Pack::hot, Pack::raw) &&
        covered(jar.tabled, Pack::raw, Pack::hot)) {
      results.point(PointKind::pack, State::held, {}, "hot or raw");
      return;
    }
    const std::string needed = hot && raw ? "hot or raw" : pack_words(hot ? Pack::hot : Pack::raw);
    results.point(PointKind::pack, State::unknown, {}, needed);
    tell(hot && raw ? Case::unsaid_differ : Case::unsaid_one, reading, jar, {}, needed, results);
  }

  void tell(Case which, const Reading& reading, const JarProcess& jar, std::string found, std::string needed,
            Results& results) const {
    const Rule* rule = cases_.find(which, reading);
    if (rule == nullptr) return;
    const Position at = reading.recipe->pack ? reading.recipe->pack->at : reading.recipe->process_or_title();
    results.add(*rule, at,
                {{"found", std::move(found)},
                 {"needed", std::move(needed)},
                 {"jar", jar_words(jar)},
                 {"of", of_words(reading)},
                 {"product", reading.match.product->title}});
  }

  Cases cases_;
};

}  // namespace

std::unique_ptr<Check> make_pack_against_table(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<PackAgainstTable>(rules, maker);
}

}  // namespace sealworthy::checks
