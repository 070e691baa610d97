#include "prose/understand.hpp"

#include <algorithm>
#include <string>

#include "prose/filling.hpp"
#include "prose/marks.hpp"
#include "prose/open_processes.hpp"
#include "prose/process.hpp"
#include "prose/process_words.hpp"
#include "recipe/fields.hpp"

namespace sealworthy::prose {
namespace {

using recipe::PageText;
using recipe::Placed;
using recipe::Recipe;

constexpr std::string_view no_title = "(a recipe without a name)";

/// Both orders of two closed ranges with the same ends would be told twice.
bool same(const Draft& a, const Draft& b) {
  if (a.kind != b.kind || a.pack != b.pack || a.jars.size() != b.jars.size()) return false;
  for (std::size_t i = 0; i < a.jars.size(); ++i)
    if (a.jars[i].value.volume != b.jars[i].value.volume) return false;
  return same_value(a.gauge, b.gauge) && same_value(a.pressure, b.pressure) && same_value(a.time, b.time) &&
         same_value(a.altitude, b.altitude);
}

class Understanding {
 public:
  Understanding(const recipe::Page& page, const Vocabulary& vocabulary)
      : page_(page), vocabulary_(vocabulary), kept_(std::make_shared<recipe::Kept>()), reader_(vocabulary) {
    kept_->document = page.arena;
    recipe_.arena = kept_;
    recipe_.units = page.units;
    recipe_.prose = true;
  }

  std::variant<Understood, yaml::Error> run() {
    recipe_.title = {page_.title.text.empty() ? no_title : page_.title.text, page_.title.at,
                     page_.title.text};
    if (page_.ingredients.empty())
      return yaml::Error{page_.title.at, "The recipe has no ingredients that could be told from the rest.",
                         "Put them in a list of their own, each on a line."};
    split();
    for (std::size_t i = 0; i < sentences_.size(); ++i)
      reader_.read(sentences_[i], i + 1 < sentences_.size() ? &sentences_[i + 1] : nullptr);
    // What is told above the list of ingredients is the process where nothing below tells one.
    if (!reader_.found())
      for (std::size_t i = 0; i < about_.size(); ++i)
        reader_.read(about_[i], i + 1 < about_.size() ? &about_[i + 1] : nullptr);
    drafts_ = reader_.finish(title_.empty() ? nullptr : &title_.front());
    read_yields();
    read_pack();
    for (const auto* list : {&title_, &sentences_, &about_})
      for (const Sentence& sentence : *list)
        if (const auto home = find_home(sentence)) recipe_.homes.push_back(*home);
    processes();
    jars();
    headspaces();
    ingredients();
    for (const PageText& text : page_.directions) recipe_.steps.push_back({text.text, text.at, text.text});
    for (const recipe::Doubt& doubt : reader_.doubts()) recipe_.doubts.push_back(doubt);
    const bool about_canning = canning();
    return Understood{std::move(recipe_), about_canning};
  }

 private:
  void split() {
    const auto read = [&](const PageText& text, std::vector<Sentence>& out) {
      for (Sentence& sentence : read_sentences(text, vocabulary_, recipe_.units))
        out.push_back(std::move(sentence));
    };
    read(page_.title, title_);
    for (const PageText& text : page_.directions) read(text, sentences_);
    for (const PageText& text : page_.about) read(text, about_);
  }

  void doubt(Position at, std::string_view words, std::string reason) {
    recipe_.doubts.push_back({at, words, std::move(reason)});
  }

  void read_yield(std::string_view text, Position at) {
    if (recipe_.makes) return;
    for (std::string_view part = recipe::trimmed(text); !part.empty();) {
      const auto read = quantity::read_yield(part, recipe_.units);
      if (const auto* yield = std::get_if<quantity::Yield>(&read)) {
        if (yield->jar) recipe_.makes = Placed<quantity::Yield>{*yield, at, part};
        return;
      }
      const std::size_t cut = part.find_last_of("(,;.");
      if (cut == std::string_view::npos) return;
      part = recipe::trimmed(part.substr(0, cut));
    }
  }

  void read_yields() {
    for (const PageText& text : page_.yields) read_yield(text.text, text.at);
    for (const Sentence& sentence : sentences_)
      if (sentence.senses.front().has(Sense::yield)) read_yield(sentence.all_words(), sentence.at(0));
  }

  void read_pack() {
    std::optional<Placed<recipe::Pack>> named, filled;
    bool both_named = false, both_filled = false;
    const auto note = [](std::optional<Placed<recipe::Pack>>& known, bool& both,
                         const Placed<recipe::Pack>& pack) {
      both = both || (known && known->value != pack.value);
      if (!known) known = pack;
    };
    const Sentence* title = title_.empty() ? nullptr : &title_.front();
    for (const auto* list : {&title_, &sentences_}) {
      for (const Sentence& sentence : *list) {
        for (const Mark& mark : sentence.marks)
          if (mark.kind == Mark::Kind::pack && !mark.denied)
            note(named, both_named,
                 {mark.pack, sentence.at(mark.first), sentence.words(mark.first, mark.last)});
        if (const auto pack = find_pack(sentence, title)) note(filled, both_filled, *pack);
      }
    }
    if (named && !both_named) recipe_.pack = named;
    if (!named && filled && !both_filled) recipe_.pack = filled;
    if (!named && !filled) recipe_.pack = find_pack_by_heat(sentences_, title);
  }

  void processes() {
    std::vector<const Draft*> kept;
    for (const Draft& draft : drafts_) {
      if (draft.pack && recipe_.pack && *draft.pack != recipe_.pack->value) continue;
      if (draft.pack && !recipe_.pack)
        doubt(draft.at, draft.words, "the time depends on the pack, and the pack is not told");
      const bool known =
          std::any_of(kept.begin(), kept.end(), [&](const Draft* k) { return same(*k, draft); });
      if (!known) kept.push_back(&draft);
    }
    for (const Draft* draft : kept) {
      recipe::Process process;
      process.at = draft->at;
      process.method = draft->method;
      process.gauge = draft->gauge;
      process.pressure = draft->pressure;
      process.time = draft->time;
      process.altitude = draft->altitude;
      process.jars = draft->jars;
      recipe_.processes.push_back(std::move(process));
    }
    if (!recipe_.processes.empty()) recipe_.process_at = recipe_.processes.front().at;
  }

  void jars() {
    const bool by_process = std::any_of(recipe_.processes.begin(), recipe_.processes.end(),
                                        [](const recipe::Process& p) { return !p.jars.empty(); });
    if (by_process) {
      give_open_processes_the_rest(recipe_, sentences_);
      return other_sizes();
    }
    for (const Sentence& sentence : sentences_) {
      for (const Mark& mark : sentence.marks) {
        if (mark.kind != Mark::Kind::jar || mark.denied) continue;
        const bool known = std::any_of(recipe_.jars.begin(), recipe_.jars.end(),
                                       [&](const auto& j) { return j.value.volume == mark.jar.volume; });
        if (!known)
          recipe_.jars.push_back({mark.jar, sentence.at(mark.first), sentence.words(mark.first, mark.last)});
      }
    }
    if (recipe_.jars.empty() && recipe_.makes && recipe_.makes->value.jar)
      recipe_.jars.push_back({*recipe_.makes->value.jar, recipe_.makes->at, recipe_.makes->text});
  }

  /// Jars are filled of a size that no process names.
  void other_sizes() {
    for (const Sentence& sentence : sentences_) {
      if (!sentence.has(Sense::fill)) continue;
      for (const Mark& mark : sentence.marks) {
        if (mark.kind != Mark::Kind::jar || mark.denied || sentence.polarity.supposed[mark.first]) continue;
        const bool named = std::any_of(
            recipe_.processes.begin(), recipe_.processes.end(), [&](const recipe::Process& process) {
              return process.jars.empty() ||
                     std::any_of(process.jars.begin(), process.jars.end(),
                                 [&](const auto& jar) { return jar.value.volume == mark.jar.volume; });
            });
        if (!named)
          doubt(sentence.at(mark.first), sentence.all_words(), "no time is told for jars of this size");
      }
    }
  }

  void headspaces() {
    std::vector<HeadspaceTold> told;
    for (const Sentence& sentence : sentences_) find_headspaces(sentence, told);
    for (const HeadspaceTold& one : told) {
      if (one.jar && give_to_processes(one)) continue;
      if (!recipe_.headspace) {
        recipe_.headspace = one.value;
      } else {
        // Told twice with other figures: the checks read the worse end.
        recipe_.headspace->value = hull(recipe_.headspace->value, one.value.value);
      }
    }
  }
  bool give_to_processes(const HeadspaceTold& one) {
    bool given = false;
    for (recipe::Process& process : recipe_.processes) {
      const bool its = std::any_of(process.jars.begin(), process.jars.end(),
                                   [&](const auto& jar) { return jar.value.volume == one.jar->volume; });
      if (!its || process.jars.size() != 1) continue;
      process.headspace = process.headspace
                              ? Placed<Interval<Headspace>>{hull(process.headspace->value, one.value.value),
                                                            one.value.at, one.value.text}
                              : one.value;
      given = true;
    }
    return given;
  }

  void ingredients() {
    for (const PageText& text : page_.ingredients) {
      recipe::IngredientLine line;
      line.text = text.text;
      line.at = text.at;
      recipe_.ingredients.push_back(std::move(line));
    }
    std::vector<PerJar> per_jar;
    for (const Sentence& sentence : sentences_) find_per_jar(sentence, recipe_.units, per_jar);
    std::vector<std::size_t> replaced;
    const std::size_t listed = recipe_.ingredients.size();
    for (const PerJar& one : per_jar) {
      std::vector<std::size_t> lines;
      for (std::size_t i = 0; i < listed; ++i)
        if (speaks_of(recipe_.ingredients[i].text, one.food)) lines.push_back(i);
      const bool told = std::any_of(lines.begin(), lines.end(), [&](std::size_t i) {
        return quantity::read_amount(recipe_.ingredients[i].text, recipe_.units, true).has_value();
      });
      if (told) continue;  // counted in the list already: it must not count twice
      std::string_view food = one.food;
      // Of several lines none may give way, for each may be another food.
      if (lines.size() == 1) {
        replaced.push_back(lines.front());
        // The list may say more: "bottled lemon juice" of the "lemon juice".
        if (recipe_.ingredients[lines.front()].text.size() > food.size())
          food = recipe_.ingredients[lines.front()].text;
      }
      add_per_jar(one, food);
    }
    std::sort(replaced.begin(), replaced.end());
    replaced.erase(std::unique(replaced.begin(), replaced.end()), replaced.end());
    std::reverse(replaced.begin(), replaced.end());
    for (const std::size_t i : replaced)
      recipe_.ingredients.erase(recipe_.ingredients.begin() + static_cast<std::ptrdiff_t>(i));
  }
  void add_per_jar(const PerJar& one, std::string_view food) {
    recipe::IngredientLine line;
    line.text = kept_->compose(std::string(one.amount) + " " + std::string(food) +
                               (one.optional ? ", optional" : ""));
    line.at = one.at;
    line.per_jar = true;
    line.per_jar_of = one.size;
    const bool known =
        std::any_of(recipe_.ingredients.begin(), recipe_.ingredients.end(), [&](const auto& other) {
          const bool size =
              other.per_jar_of.has_value() == line.per_jar_of.has_value() &&
              (!line.per_jar_of || other.per_jar_of->value.volume == line.per_jar_of->value.volume);
          return other.per_jar && size && other.text == line.text;
        });
    if (!known) recipe_.ingredients.push_back(std::move(line));
  }
  /// True if a line of the list names the food: all its words stand there, or all words of the line but its
  /// amount are words of the food.
  bool speaks_of(std::string_view line, std::string_view food) const {
    const text::Words wanted(food);
    if (wanted.empty()) return false;
    const auto within = [](const text::Words& some, const text::Words& all) {
      return std::all_of(some.begin(), some.end(), [&](const text::Word& word) {
        return std::any_of(all.begin(), all.end(), [&](const text::Word& w) { return w.text == word.text; });
      });
    };
    if (within(wanted, text::Words(line))) return true;
    const auto amount = quantity::read_amount(line, recipe_.units, true);
    const text::Words named(amount && amount->begin == 0 ? line.substr(amount->end) : line);
    return !named.empty() && within(named, wanted);
  }

  [[nodiscard]] bool any(Sense sense) const {
    for (const auto* list : {&title_, &sentences_, &about_})
      if (std::any_of(list->begin(), list->end(), [&](const Sentence& s) { return s.has(sense); }))
        return true;
    return false;
  }

  [[nodiscard]] bool canning() const {
    if (any(Sense::canning)) return true;
    if (!recipe_.processes.empty()) {
      const bool jars = any(Sense::jar) || any(Sense::process) ||
                        std::any_of(sentences_.begin(), sentences_.end(),
                                    [](const Sentence& s) { return s.has(Mark::Kind::jar); });
      // A custard stands in a water bath too, in the oven.
      return jars || !any(Sense::oven_work);
    }
    bool filled = false;
    for (const Sentence& sentence : sentences_) {
      const bool jars = std::any_of(sentence.tokens.begin(), sentence.tokens.end(),
                                    [](const phrases::Token& token) { return token.text == "jars"; });
      filled = filled || ((jars || sentence.has(Sense::glasses)) && sentence.has(Sense::fill));
      if (filled &&
          (sentence.has(Sense::lids_alone) || sentence.has(Sense::seal) || sentence.has(Sense::stored)))
        return true;
    }
    return false;
  }

  const recipe::Page& page_;
  const Vocabulary& vocabulary_;
  std::shared_ptr<recipe::Kept> kept_;
  ProcessReader reader_;
  Recipe recipe_;
  std::vector<Sentence> title_, sentences_, about_;
  std::vector<Draft> drafts_;
};

}  // namespace

std::variant<Understood, yaml::Error> understand(const recipe::Page& page, const Vocabulary& vocabulary) {
  return Understanding(page, vocabulary).run();
}

}  // namespace sealworthy::prose
