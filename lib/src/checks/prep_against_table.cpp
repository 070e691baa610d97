#include "checks/prep_against_table.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <optional>
#include <tuple>
#include <vector>

#include "checks/fields.hpp"
#include "phrases/figures.hpp"
#include "phrases/lexicon.hpp"
#include "phrases/negation.hpp"

namespace sealworthy::checks {
namespace {

using phrases::Figure;
using phrases::Line;
using phrases::Term;
using reading::Reading;

enum class Case { shorter, left_out, reversed };
const std::vector<std::string_view> case_names{"shorter", "left-out", "reversed"};

/// "hot pack: boil 5 minutes in the syrup", read: its first verb, and the least time that it gives.
struct Required {
  std::string text;
  std::optional<recipe::Pack> pack;
  std::vector<Term> terms;  ///< of its words, in order
  double minutes = 0;       ///< 0: it gives none
};

/// A verb of the rule in one sentence of the steps.
struct Telling {
  Term verb = 0;
  bool denied = false;
  std::size_t step = 0, sentence = 0;
  double minutes = 0;  ///< the most that it gives; 0: none
  std::string found;   ///< that time as written
};

struct Entry {
  const Rule* rule = nullptr;
  Case which = Case::shorter;
  std::vector<Term> verbs;
  std::vector<Term> heats;  ///< of the verbs, those that do the same work
  std::vector<Term> unless;
};

bool holds(const std::vector<Term>& list, Term term) {
  return std::find(list.begin(), list.end(), term) != list.end();
}

class PrepAgainstTable final : public Check {
 public:
  PrepAgainstTable(std::span<const Rule* const> rules, Maker& maker) {
    for (const Rule* rule : rules) read_rule(*rule, maker);
    lexicon_.finish();
    first_product_ = maker.tables.products().data();
    for (const auto& product : maker.tables.products()) {
      auto& list = required_.emplace_back();
      for (const auto& text : product.required) list.push_back(read_required(text));
    }
  }

  void run(const Reading& reading, Results& results) const override {
    const auto* product = reading.match.product;
    if (product == nullptr || !reading.match.sure() || reading.steps.empty()) return;
    const auto& required = required_[static_cast<std::size_t>(product - first_product_)];
    if (required.empty()) return;
    for (const auto& entry : entries_) {
      if (!applies(entry.rule->only_if, reading)) continue;
      const auto told = tellings(entry, reading);
      if (told.empty()) continue;
      if (entry.which == Case::reversed)
        judge_order(entry, required, told, reading, results);
      else
        for (const auto& one : required)
          if (meant(one, reading)) judge(entry, one, required, told, reading, results);
    }
  }

 private:
  void read_rule(const Rule& rule, Maker& maker) {
    Fields with(rule.with, "rule " + rule.id + ", with", {rule.file, maker.errors});
    Entry entry;
    entry.rule = &rule;
    const auto which = with.choice("case", case_names, true);
    const auto heats = with.list("heats");
    for (const auto& verb : with.list("verbs")) {
      entry.verbs.push_back(lexicon_.any_form(verb));
      if (std::find(heats.begin(), heats.end(), verb) != heats.end())
        entry.heats.push_back(entry.verbs.back());
    }
    for (const auto& word : with.list("unless")) entry.unless.push_back(lexicon_.any_form(word));
    with.done();
    if (entry.verbs.empty()) with.sink().add(rule.with.at, "rule " + rule.id + ": 'verbs:' is missing");
    if (!which) return;
    entry.which = static_cast<Case>(*which);
    entries_.push_back(std::move(entry));
  }

  Required read_required(std::string_view text) const {
    Required required;
    required.text = std::string(text);
    if (text.starts_with("hot pack: ")) required.pack = recipe::Pack::hot;
    if (text.starts_with("raw pack: ")) required.pack = recipe::Pack::raw;
    const reading::Sentences sentences(text);
    double least = std::numeric_limits<double>::infinity();
    Line line;
    for (const auto& sentence : sentences.all) {
      line.read(lexicon_, sentences.words, sentence);
      for (const auto& token : line.all())
        for (const auto term : lexicon_.terms(token)) required.terms.push_back(term);
      std::array<Figure, phrases::most_figures> figures;
      const auto count = phrases::read_figures(line.all(), figures);
      for (std::size_t i = 0; i < count; ++i)
        if (figures[i].dimension == phrases::Dimension::minutes) least = std::min(least, figures[i].low);
    }
    if (least < std::numeric_limits<double>::infinity()) required.minutes = least;
    return required;
  }

  static bool meant(const Required& required, const Reading& reading) {
    const auto& pack = reading.recipe->pack;
    return !required.pack || !pack || *required.pack == pack->value;
  }

  /// The first of the rule's verbs in a required piece of work.
  static std::optional<Term> verb_of(const Required& required, const Entry& entry) {
    for (const auto term : required.terms)
      if (holds(entry.verbs, term)) return term;
    return std::nullopt;
  }

  std::vector<Telling> tellings(const Entry& entry, const Reading& reading) const {
    std::vector<Telling> out;
    Line line;
    for (std::size_t step = 0; step < reading.steps.size(); ++step) {
      const auto& sentences = reading.steps[step].sentences;
      for (std::size_t s = 0; s < sentences.all.size(); ++s) {
        if (sentences.all[s].question) continue;
        line.read(lexicon_, sentences.words, sentences.all[s]);
        const auto first = out.size();
        read(entry, line, out);
        for (std::size_t i = first; i < out.size(); ++i) {
          out[i].step = step;
          out[i].sentence = s;
        }
      }
    }
    return out;
  }

  void read(const Entry& entry, const Line& line, std::vector<Telling>& out) const {
    const auto has = [&](const phrases::Token& token, const std::vector<Term>& list) -> std::optional<Term> {
      for (const auto term : lexicon_.terms(token))
        if (holds(list, term)) return term;
      return std::nullopt;
    };
    const auto all = line.all();
    if (std::none_of(all.begin(), all.end(), [&](const auto& token) { return has(token, entry.verbs); }))
      return;
    phrases::Polarity polarity;
    phrases::analyse(all, polarity);
    std::array<Figure, phrases::most_figures> figures;
    const auto count = phrases::read_figures(all, figures);
    for (std::size_t i = 0; i < all.size(); ++i) {
      const auto verb = has(all[i], entry.verbs);
      if (!verb || polarity.supposed[i]) continue;
      if (i + 1 < all.size() && all[i + 1].text == "water" && all[i].text.ends_with("ing")) continue;
      const auto clause = clause_of(i, all);
      if (std::any_of(clause.begin(), clause.end(),
                      [&](const auto& token) { return has(token, entry.unless).has_value(); }))
        continue;
      Telling telling;
      telling.verb = *verb;
      telling.denied = polarity.denied(i, 0);
      for (std::size_t f = 0; f < count; ++f) {
        if (figures[f].dimension != phrases::Dimension::minutes || figures[f].first <= i) continue;
        if (owns(i, figures[f].first, all,
                 [&](const auto& token) { return has(token, entry.verbs).has_value(); })) {
          telling.minutes = figures[f].high;
          for (std::size_t w = figures[f].first; w < figures[f].last; ++w)
            telling.found += (w > figures[f].first ? " " : "") + std::string(all[w].text);
        }
        break;
      }
      out.push_back(std::move(telling));
    }
  }

  /// The words around a verb up to a mark, an "and", a "then".
  static std::span<const phrases::Token> clause_of(std::size_t verb, std::span<const phrases::Token> all) {
    const auto parts = [](const phrases::Token& token) {
      return token.before != 0 ||
             (token.grammar & (phrases::Grammar::turn | phrases::Grammar::joiner_and)) != 0;
    };
    std::size_t first = verb, last = verb + 1;
    while (first > 0 && !parts(all[first])) --first;
    while (last < all.size() && !parts(all[last])) ++last;
    return all.subspan(first, last - first);
  }

  /// Nothing between a verb and a time gives the time to other work.
  template <class IsVerb>
  static bool owns(std::size_t verb, std::size_t time, std::span<const phrases::Token> all,
                   const IsVerb& is_verb) {
    constexpr std::size_t reach = 10;
    if (time - verb > reach) return false;
    for (std::size_t i = verb + 1; i <= time && i < all.size(); ++i)
      if ((all[i].grammar & (phrases::Grammar::turn | phrases::Grammar::joiner_and)) != 0 || is_verb(all[i]))
        return false;
    return true;
  }

  static void judge(const Entry& entry, const Required& required, const std::vector<Required>& all,
                    const std::vector<Telling>& told, const Reading& reading, Results& results) {
    const auto verb = verb_of(required, entry);
    if (!verb) return;
    const Telling* best = nullptr;
    bool done = false;
    for (const auto& telling : told) {
      if (telling.verb != *verb) continue;
      if (!telling.denied) done = true;
      if (entry.which == Case::left_out ? telling.denied : !telling.denied && telling.minutes > 0)
        if (best == nullptr || telling.minutes > best->minutes) best = &telling;
    }
    if (best == nullptr) return;
    // A boil that the process asks for itself is no second one for its simmer.
    const auto asked = [&](Term other) {
      return std::any_of(all.begin(), all.end(),
                         [&](const auto& one) { return verb_of(one, entry) == other; });
    };
    const auto heats_as_long = [&](const Telling& telling) {
      return !telling.denied && telling.minutes >= required.minutes && holds(entry.heats, telling.verb) &&
             !asked(telling.verb);
    };
    if (entry.which == Case::shorter && holds(entry.heats, *verb) &&
        std::any_of(told.begin(), told.end(), heats_as_long))
      return;
    if (entry.which == Case::left_out ? done : required.minutes <= 0 || best->minutes >= required.minutes)
      return;
    tell(entry, *best, required.text, reading, results);
  }

  /// Two pieces of work, each told once and in sentences of their own, the later one first.
  static void judge_order(const Entry& entry, const std::vector<Required>& required,
                          const std::vector<Telling>& told, const Reading& reading, Results& results) {
    const auto place = [](const Telling& t) { return std::tuple(t.step, t.sentence); };
    const auto only = [&](Term verb) -> const Telling* {
      const Telling* one = nullptr;
      for (const auto& telling : told) {
        if (telling.verb != verb || telling.denied) continue;
        if (one != nullptr) return nullptr;
        one = &telling;
      }
      return one;
    };
    const Required* earlier = nullptr;
    for (const auto& later : required) {
      const auto second = meant(later, reading) ? verb_of(later, entry) : std::nullopt;
      if (!second) continue;
      const auto first = earlier != nullptr ? verb_of(*earlier, entry) : std::nullopt;
      const auto* one = earlier;
      earlier = &later;
      if (!first || *first == *second) continue;
      const auto *before = only(*first), *after = only(*second);
      if (before != nullptr && after != nullptr && place(*after) < place(*before))
        tell(entry, *after, one->text + ", then " + later.text, reading, results);
    }
  }

  static void tell(const Entry& entry, const Telling& telling, const std::string& needed,
                   const Reading& reading, Results& results) {
    results.point(PointKind::form, Point::State::differs, telling.found, needed);
    const auto& step = reading.steps[telling.step];
    const auto& sentence = step.sentences.all[telling.sentence];
    const auto begin = step.sentences.words[sentence.first].begin;
    const auto end = step.sentences.words[sentence.last - 1].end;
    results.add(*entry.rule, step.at,
                {{"found", telling.found},
                 {"needed", needed},
                 {"words", std::string(step.text.substr(begin, end - begin))}});
  }

  phrases::Lexicon lexicon_;
  std::vector<Entry> entries_;
  std::vector<std::vector<Required>> required_;
  const tested::Product* first_product_ = nullptr;
};

}  // namespace

std::unique_ptr<Check> make_prep_against_table(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<PrepAgainstTable>(rules, maker);
}

}  // namespace sealworthy::checks
