#include "prose/marks.hpp"

#include <algorithm>
#include <array>
#include <limits>

#include "phrases/figures.hpp"

namespace sealworthy::prose {
namespace {

using phrases::Dimension;
using phrases::Figure;
using phrases::Grammar;
using Kind = Mark::Kind;

constexpr double no_end = std::numeric_limits<double>::infinity();
constexpr double feet_in_metre = 1 / 0.3048;
constexpr double psi_in_kilopascal = 1000 / unit::psi;

/// Where a word may stand for a figure's unit that the steps' figures do not know.
struct OtherUnit {
  std::string_view word;
  Dimension dimension;
  double size;
};
constexpr std::array other_units{OtherUnit{"m", Dimension::feet, feet_in_metre},
                                 OtherUnit{"metre", Dimension::feet, feet_in_metre},
                                 OtherUnit{"metres", Dimension::feet, feet_in_metre},
                                 OtherUnit{"meter", Dimension::feet, feet_in_metre},
                                 OtherUnit{"meters", Dimension::feet, feet_in_metre},
                                 OtherUnit{"kpa", Dimension::pounds, psi_in_kilopascal},
                                 OtherUnit{"psig", Dimension::pounds, 1}};

class Finder {
 public:
  Finder(Sentence& sentence, const Vocabulary& vocabulary, quantity::Units units)
      : s_(sentence), vocabulary_(vocabulary), units_(units), taken_(sentence.tokens.size(), false) {}

  void run() {
    figures();
    methods();
    jars();
    for (const auto& [first, last] : measures_) take(first, last);
    for (std::size_t i = 0; i < size(); ++i) words(i);
    std::stable_sort(s_.marks.begin(), s_.marks.end(),
                     [](const Mark& a, const Mark& b) { return a.first < b.first; });
    find_altitudes_told_back(s_);
  }

 private:
  [[nodiscard]] std::size_t size() const { return s_.tokens.size(); }
  [[nodiscard]] std::string_view text(std::size_t i) const {
    return i < size() ? s_.tokens[i].text : std::string_view();
  }
  [[nodiscard]] bool is(std::size_t i, Sense sense) const { return i < size() && s_.senses[i].has(sense); }
  [[nodiscard]] bool before(std::size_t i, Sense sense) const { return ends_before(s_, i, sense); }
  Mark& mark(Kind kind, std::size_t first, std::size_t last) {
    Mark& mark = s_.marks.emplace_back();
    mark.kind = kind;
    mark.first = first;
    mark.last = last;
    mark.denied = s_.denied(first);
    return mark;
  }
  void take(std::size_t first, std::size_t last) {
    for (std::size_t i = first; i < last && i < size(); ++i) taken_[i] = true;
  }
  [[nodiscard]] bool dash_between(std::size_t a, std::size_t b) const {
    const std::size_t from = s_.bytes[a].second;
    const auto between = s_.text.substr(from, s_.bytes[b].first - from);
    return between.find_first_not_of(" \t") != std::string_view::npos &&
           (between.find('-') != std::string_view::npos ||
            between.find("\xE2\x80") != std::string_view::npos) &&
           between.find_first_of(".,;:") == std::string_view::npos;
  }

  // --- figures

  void figures() {
    std::array<Figure, phrases::most_figures> found;
    const std::size_t count = phrases::read_figures(s_.tokens, found);
    s_.overfull = count == phrases::most_figures;
    for (std::size_t i = 0; i < count; ++i) {
      Figure figure = found[i];
      // "1 hour 15 minutes", "1 hour and 15 minutes"
      if (figure.dimension == Dimension::minutes && i + 1 < count && hour_and_minutes(figure, found[i + 1])) {
        figure.last = found[i + 1].last;
        figure.low += found[i + 1].low;
        figure.high += found[i + 1].high;
        ++i;
      }
      add(figure);
    }
    for (std::size_t i = 0; i + 1 < size(); ++i) {
      if (!s_.tokens[i].number || taken_[i] || s_.tokens[i + 1].before != 0) continue;
      for (const OtherUnit& other : other_units) {
        const auto value = other.word == text(i + 1) ? phrases::number(text(i)) : std::nullopt;
        if (value) add({i, i + 2, other.dimension, *value * other.size, *value * other.size}, other.size);
      }
    }
  }

  [[nodiscard]] bool hour_and_minutes(const Figure& hours, const Figure& minutes) const {
    const std::string_view unit = text(hours.last - 1);
    const bool joined =
        minutes.first == hours.last || (minutes.first == hours.last + 1 && text(hours.last) == "and");
    return joined && one_of(unit, {"hour", "hours", "hr", "hrs", "h"}) && minutes.low < 60 &&
           minutes.dimension == Dimension::minutes;
  }

  /// The lower end that stands before a figure: "0 – 1,000 ft", "between 1,001 and 3,000 feet".
  void widen(Figure& figure, double unit) const {
    if (figure.first == 0 || figure.low != figure.high) return;
    std::size_t lower = figure.first - 1;
    const bool between = text(lower) == "and" && lower >= 2 && text(lower - 2) == "between";
    const bool to = figure.dimension == Dimension::feet && lower > 0 && text(lower) == "to";
    if (between || to) --lower;
    if (!s_.tokens[lower].number || (!between && !to && !dash_between(lower, figure.first))) return;
    const auto value = phrases::number(text(lower));
    if (!value || *value * unit > figure.low) return;
    figure.low = *value * unit;
    figure.first = lower;
  }

  /// `unit`: how much of the dimension's own unit a figure before it counts.
  void add(Figure figure, double unit = 1) {
    widen(figure, unit);
    if (figure.dimension == Dimension::cups) {
      // "half-pint jars" are told by the same words as "half a pint": jars are looked for first.
      measures_.emplace_back(figure.first, figure.last);
      return;
    }
    take(figure.first, figure.last);
    switch (figure.dimension) {
      case Dimension::minutes:
        add_time(figure);
        break;
      case Dimension::pounds:
        add_pressure(figure);
        break;
      case Dimension::feet:
        add_altitude(figure);
        break;
      case Dimension::inches:
        mark(Kind::length, figure.first, figure.last).figure = {figure.low, figure.high};
        break;
      default:
        break;
    }
  }

  void add_time(const Figure& figure) {
    const bool of_something_else = before(figure.first, Sense::after) ||
                                   one_of(text(figure.last), {"later", "before", "ahead", "earlier", "less"});
    if (of_something_else || figure.high > vocabulary_.longest_minutes()) return;
    Mark& time = mark(Kind::time, figure.first, figure.last);
    time.figure = {figure.low, figure.high};
  }

  void add_pressure(const Figure& figure) {
    if (figure.high > vocabulary_.largest_psi() || figure.low < 1) return;
    const auto unit = text(figure.last - 1);
    const bool sure = one_of(unit, {"psi", "psig", "kpa"}) || is(figure.last, Sense::pressure) ||
                      (one_of(text(figure.last), {"of", "steam", "gauge"}) &&
                       (is(figure.last + 1, Sense::pressure) || text(figure.last) == "gauge"));
    const auto lead = figure.first == 0 ? std::string_view() : text(figure.first - 1);
    const bool canner = s_.has(Sense::pressure) || s_.has(Sense::process);
    const bool of_something = one_of(text(figure.last), {"of"});
    const bool likely = canner &&
                        one_of(lead, {"at", "to", "under", "reaches", "reach", "reached", "or", "use"}) &&
                        !of_something;
    const bool behind_time =
        lead == "at" && !of_something && std::any_of(s_.marks.begin(), s_.marks.end(), [&](const Mark& m) {
          return m.kind == Kind::time && m.last + 1 == figure.first;
        });
    if (!sure && !likely && !(behind_time && stands_alone(figure.last)) &&
        !(of_gauge() && stands_alone(figure.last)))
      return;
    mark(Kind::pressure, figure.first, figure.last).figure = {figure.low, figure.high};
  }

  /// "Dial gauge: 11 lb", "use 10 pounds up to 1,000 ft, 15 pounds above that": the sentence is about gauges,
  /// or has told a pressure already.
  [[nodiscard]] bool of_gauge() const {
    return s_.has(Sense::gauge_dial) || s_.has(Sense::gauge_weighted) || s_.has(Kind::pressure);
  }
  /// No food stands behind a figure of pounds.
  [[nodiscard]] bool stands_alone(std::size_t i) const {
    return i >= size() || s_.tokens[i].before != 0 || s_.tokens[i].number || is(i, Sense::above) ||
           is(i, Sense::below) || is(i, Sense::higher) ||
           one_of(text(i), {"at", "from", "to", "for", "in", "on", "if", "or", "and", "between", "with"});
  }

  void add_altitude(const Figure& figure) {
    Mark& altitude = mark(Kind::altitude, figure.first, figure.last);
    altitude.feet = {figure.low, figure.high};
    const bool joined = one_of(text(figure.last), {"or", "and"});
    const bool under = joined && one_of(text(figure.last + 1), {"below", "lower", "less", "under"});
    const std::size_t lead = figure.first;
    const bool further = lead > 0 && one_of(text(lead - 1), {"additional", "extra", "further"});
    // "sea level to 1,000 ft", "10 lb to 1,000 ft"
    const bool to_it = lead >= 2 && text(lead - 1) == "to" && !s_.tokens[lead - 2].number;
    if (before(lead, Sense::each) || text(figure.last) == "increments" ||
        (further && before(lead - 1, Sense::each))) {
      altitude.step = true;
    } else if (is(figure.last, Sense::and_up) || before(lead, Sense::above)) {
      altitude.feet = {figure.low, no_end};
    } else if (under || before(lead, Sense::below) || to_it) {
      altitude.feet.low = 0;
    }
  }

  // --- names

  void methods() {
    for (std::size_t i = 0; i < size(); ++i) {
      const MethodAt method = vocabulary_.method_at(s_.tokens, i);
      if (method.words == 0 || text(i) == "pressure") {
        // "pressure canner" is a method, "10 pounds pressure" is none.
        if (method.words < 2) continue;
      }
      if (method.words == 1 && !method.sure && !in_it(i)) continue;
      Mark& named = mark(Kind::method, i, i + method.words);
      named.method = method;
      if (method.words > 1 || method.sure) take(i, i + method.words);
      i += method.words - 1;
    }
  }
  /// "in the oven", "by boiling"
  [[nodiscard]] bool in_it(std::size_t i) const {
    if (i == 0) return false;
    if (i > 1 && (s_.tokens[i - 1].grammar & Grammar::determiner) != 0) --i;
    return one_of(text(i - 1), {"in", "by", "with", "using"});
  }

  void jars() {
    for (std::size_t i = 0; i < size(); ++i) {
      if (taken_[i]) continue;
      if (auto jar = jar_at(s_, i, taken_, units_)) {
        take(i, jar->last);
        i = jar->last - 1;
        s_.marks.push_back(std::move(*jar));
      }
    }
  }
  // --- verbs and single words

  [[nodiscard]] bool is_noun(std::size_t i) const {
    if (i == 0) return false;
    return (s_.tokens[i - 1].grammar & Grammar::determiner) != 0 ||
           one_of(text(i - 1), {"full", "rolling", "gentle", "hard", "steady", "food"});
  }
  [[nodiscard]] bool participle(std::size_t i) const {
    const auto word = text(i);
    if (is(i + 1, Sense::liquid) && word.ends_with("ing")) return true;
    if (!word.ends_with("ed") || i == 0) return word.ends_with("ed") && i == 0;
    return (s_.tokens[i - 1].grammar & Grammar::be_form) == 0;
  }

  void words(std::size_t i) {
    const Senses& senses = s_.senses[i];
    if (senses.has(Sense::raw_pack)) pack(i, senses.words(Sense::raw_pack), recipe::Pack::raw);
    if (senses.has(Sense::hot_pack)) pack(i, senses.words(Sense::hot_pack), recipe::Pack::hot);
    if (senses.has(Sense::gauge_dial)) gauge(i, recipe::Gauge::dial);
    if (senses.has(Sense::gauge_weighted)) gauge(i, recipe::Gauge::weighted);
    if (taken_[i]) return;
    if (senses.has(Sense::process)) {
      mark(Kind::process, i, i + 1);
    } else if (senses.has(Sense::increase)) {
      mark(Kind::increase, i, i + 1);
    } else if (senses.has(Sense::other_work) && !is_noun(i) && !participle(i)) {
      mark(Kind::work, i, i + 1).heats_jars = senses.has(Sense::heat_jars);
    } else if (text(i) == "sea" && text(i + 1) == "level" && i > 0 && text(i - 1) == "at" &&
               text(i + 2) != "to") {
      mark(Kind::altitude, i, i + 2).feet = {0, 0};
    } else if (s_.tokens[i].number) {
      if (const auto value = phrases::number(text(i)); value && *value > 0)
        mark(Kind::number, i, i + 1).figure = {*value, *value};
    }
  }
  void pack(std::size_t i, std::size_t words, recipe::Pack pack) {
    mark(Kind::pack, i, i + words).pack = pack;
  }
  void gauge(std::size_t i, recipe::Gauge gauge) { mark(Kind::gauge, i, i + 1).gauge = gauge; }

  Sentence& s_;
  const Vocabulary& vocabulary_;
  quantity::Units units_;
  std::vector<bool> taken_;
  std::vector<std::pair<std::size_t, std::size_t>> measures_;  ///< figures of cups, pints, quarts
};

}  // namespace

void find_marks(Sentence& sentence, const Vocabulary& vocabulary, quantity::Units units) {
  Finder(sentence, vocabulary, units).run();
}

}  // namespace sealworthy::prose
