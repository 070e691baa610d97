#include "checks/practice_in_steps.hpp"

#include <algorithm>
#include <map>

#include "checks/fields.hpp"
#include "phrases/match.hpp"
#include "phrases/phrase_reader.hpp"
#include "text/nearest.hpp"

namespace sealworthy::checks {
namespace {

using phrases::Index;
using phrases::Line;
using phrases::Pattern;
using phrases::Phrases;

/// Ways of telling one practice, and the rules that speak of it.
struct Practice {
  std::vector<phrases::Items> unless;
  struct Case {
    const Rule* rule = nullptr;
    bool title = false;
    bool steps = true;
    std::vector<const Rule*> yields_to;
  };
  std::vector<Case> cases;
};

/// The sentence as written, at most so many letters.
std::string shortened(std::string_view text) {
  constexpr std::size_t longest = 90;
  if (text.size() <= longest) return std::string(text);
  const auto space = text.rfind(' ', longest);
  return std::string(text.substr(0, space == std::string_view::npos ? longest : space)) + " ...";
}

class PracticeInSteps final : public Check {
 public:
  PracticeInSteps(std::span<const Rule* const> rules, Maker& maker) {
    phrases::PhraseReader reader(phrases_, maker.errors);
    for (const auto& vocabulary : maker.vocabularies) reader.define(vocabulary.file, vocabulary.lists);
    std::vector<Waiting> waiting;
    for (const Rule* rule : rules) read_rule(*rule, reader, maker, waiting);
    for (const auto& late : waiting) resolve(late, rules, maker);
    reader.finish();
    index_ = std::make_unique<Index>(phrases_, patterns_);
  }

  void run(const reading::Reading& reading, Results& results) const override {
    if (practices_.empty()) return;
    Index::Room room(*index_);
    Work work{reading, results, room, {}, {}};
    if (reading.recipe != nullptr && !reading.title.all.empty())
      text(reading.title, reading.recipe->title.text, reading.recipe->title.at, true, work);
    for (const auto& step : reading.steps) text(step.sentences, step.text, step.at, false, work);
  }

 private:
  /// A rule that names another, which may stand after it.
  struct Waiting {
    const Rule* rule;
    Practice::Case in;
    std::string as;
    std::vector<std::string> yields_to;
    std::size_t practice;
  };
  /// A rule that a sentence flags.
  struct Flag {
    const Practice::Case* in;
    const phrases::Told* told;
  };
  struct Work {
    const reading::Reading& reading;
    Results& results;
    Index::Room& room;
    std::vector<phrases::Told> told;
    std::vector<Flag> flags;
  };

  void read_rule(const Rule& rule, phrases::PhraseReader& reader, Maker& maker,
                 std::vector<Waiting>& waiting) {
    Fields with(rule.with, "rule " + rule.id + ", with", {rule.file, maker.errors});
    Waiting late{&rule, {&rule, false, true, {}}, with.text("as"), with.list("yields-to"), practices_.size()};
    if (with.find("look-in") != nullptr) {
      const auto places = with.choices("look-in", {"title", "steps"});
      late.in.title = (places & 1U) != 0;
      late.in.steps = (places & 2U) != 0;
    }
    const auto* told = with.find("told");
    const auto* unless = with.find("unless");
    with.done();
    if ((told == nullptr) == late.as.empty()) {
      with.sink().add(rule.with.at, "rule " + rule.id + ": one of 'told:' and 'as:' is needed");
      return;
    }
    if (told != nullptr) {
      Practice practice;
      if (unless != nullptr) practice.unless = reader.read_unless(rule.file, *unless);
      reader.read_patterns(rule.file, *told, patterns_);
      practice_of_.resize(patterns_.size(), static_cast<std::uint16_t>(practices_.size()));
      names_.emplace(rule.id, practices_.size());
      practices_.push_back(std::move(practice));
    } else if (unless != nullptr) {
      with.sink().add(unless->at, "rule " + rule.id + ": 'unless:' stands with 'told:'");
    }
    waiting.push_back(std::move(late));
  }

  void resolve(const Waiting& late, std::span<const Rule* const> rules, Maker& maker) {
    const ErrorSink sink{late.rule->file, maker.errors};
    auto in = late.in;
    for (const auto& id : late.yields_to) {
      const auto other = std::find_if(rules.begin(), rules.end(), [&](const Rule* r) { return r->id == id; });
      if (other == rules.end())
        sink.add(late.rule->with.at, "rule " + late.rule->id + " yields to '" + id + "', which is no rule",
                 nearest_rule(id, rules));
      else
        in.yields_to.push_back(*other);
    }
    auto practice = late.practice;
    if (!late.as.empty()) {
      const auto found = names_.find(late.as);
      if (found == names_.end())
        return sink.add(late.rule->with.at,
                        "rule " + late.rule->id + ": '" + late.as + "' is no rule with 'told:'",
                        nearest_rule(late.as, rules));
      practice = found->second;
    }
    practices_[practice].cases.push_back(std::move(in));
  }

  static std::string nearest_rule(std::string_view id, std::span<const Rule* const> rules) {
    std::vector<std::string_view> known;
    for (const Rule* rule : rules) known.push_back(rule->id);
    const auto near = text::nearest(id, known);
    return near ? "did you mean '" + std::string(*near) + "'?" : std::string();
  }

  void text(const reading::Sentences& sentences, std::string_view written, Position at, bool title,
            Work& work) const {
    const auto& all = sentences.all;
    Line line;
    for (std::size_t s = 0; s < all.size(); ++s) {
      line.read(phrases_.lexicon(), sentences.words, all[s]);
      work.told.clear();
      index_->find(line, work.room, work.told);
      if (work.told.empty() || all[s].question) continue;
      flag(line, title, work);
      if (work.flags.empty()) continue;
      if (s + 1 < all.size()) {
        Line next;
        next.read(phrases_.lexicon(), sentences.words, all[s + 1]);
        if (index_->takes_back(next, work.room)) continue;
      }
      report(sentences.words, all[s], written, at, work);
    }
  }

  /// The rules that the told patterns stand for, each once, without those that another makes needless.
  void flag(const Line& line, bool title, Work& work) const {
    work.flags.clear();
    for (const auto& told : work.told) {
      const auto& practice = practices_[practice_of_[told.pattern]];
      if (index_->stands(practice.unless, line, work.room)) continue;
      for (const auto& in : practice.cases) {
        if (title ? !in.title : !in.steps) continue;
        const bool known = std::any_of(work.flags.begin(), work.flags.end(),
                                       [&](const Flag& flag) { return flag.in == &in; });
        if (!known && applies(in.rule->only_if, work.reading)) work.flags.push_back({&in, &told});
      }
    }
  }

  void report(const text::Words& words, const reading::Sentence& sentence, std::string_view written,
              Position at, Work& work) const {
    std::sort(work.flags.begin(), work.flags.end(),
              [](const Flag& a, const Flag& b) { return a.in->rule->id < b.in->rule->id; });
    for (const auto& flag : work.flags) {
      const auto& yields = flag.in->yields_to;
      const bool yielded = std::any_of(work.flags.begin(), work.flags.end(), [&](const Flag& other) {
        return std::find(yields.begin(), yields.end(), other.in->rule) != yields.end();
      });
      const bool twice =
          std::any_of(work.results.findings.begin(), work.results.findings.end(),
                      [&](const Finding& f) { return f.rule == flag.in->rule->id && f.at == at; });
      if (yielded || twice) continue;
      const auto cut = [&](std::size_t first, std::size_t last) {
        const auto begin = words[first].begin;
        return std::string(written.substr(begin, words[last - 1].end - begin));
      };
      Figures figures{{"words", shortened(cut(sentence.first, sentence.last))}};
      if (flag.told->figure_last > flag.told->figure_first)
        figures.emplace_back(
            "found", cut(sentence.first + flag.told->figure_first, sentence.first + flag.told->figure_last));
      work.results.add(*flag.in->rule, at, figures);
    }
  }

  Phrases phrases_;
  std::vector<Pattern> patterns_;
  std::vector<std::uint16_t> practice_of_;  ///< of each pattern
  std::vector<Practice> practices_;
  std::map<std::string, std::size_t, std::less<>> names_;  ///< practice of a rule with `told:`
  std::unique_ptr<Index> index_;
};

}  // namespace

std::unique_ptr<Check> make_practice_in_steps(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<PracticeInSteps>(rules, maker);
}

}  // namespace sealworthy::checks
