#include "checks/food_in_steps.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "checks/fields.hpp"
#include "checks/food_set.hpp"
#include "checks/phrases.hpp"
#include "text/words.hpp"

namespace sealworthy::checks {
namespace {

using reading::Reading;
using text::Word;

bool one_of(std::string_view word, const std::vector<std::string>& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

struct Entry {
  const Rule* rule;
  std::vector<std::string> verbs, exchange, particles, until;

  [[nodiscard]] bool is_verb(std::string_view word) const {
    return one_of(word, verbs) || one_of(word, exchange);
  }
  Phrases changes;
  std::vector<std::string> change_ends{};  ///< last words of `changes`: most sentences have none
  Phrases unless;
  FoodSet except;
  /// Foods that a general word may mean: of "meat", every meat and poultry.
  std::vector<std::pair<std::string, FoodSet>> general{};

  [[nodiscard]] bool meant_by(const foods::Food& word, const Reading& reading) const {
    const auto found =
        std::find_if(general.begin(), general.end(), [&](const auto& one) { return one.first == word.id; });
    if (found == general.end()) return false;
    return std::any_of(reading.ingredients.begin(), reading.ingredients.end(), [&](const auto& ingredient) {
      return std::any_of(ingredient.read.foods.begin(), ingredient.read.foods.end(), [&](const auto& named) {
        return named.food != nullptr && found->second.has(*named.food);
      });
    });
  }
};

/// "Do not add corn", "without adding corn"
bool denied(const text::Words& words, std::size_t verb, std::size_t first, std::size_t looked_at = 3) {
  static const std::vector<std::string> denials{"not",   "never", "no",     "without",
                                                "don't", "avoid", "cannot", "can't"};
  for (std::size_t i = verb; i-- > first && verb - i <= looked_at;)
    if (one_of(words[i].text, denials)) return true;
  return false;
}

std::string last_word(std::string_view name) {
  const text::Words words(name);
  return words.empty() ? std::string() : text::singular(words[words.size() - 1].text);
}

std::vector<std::string> last_words(const std::vector<std::string>& phrases) {
  std::vector<std::string> found;
  for (const auto& phrase : phrases)
    if (const text::Words words(phrase); !words.empty()) found.emplace_back(words[words.size() - 1].text);
  return found;
}

bool stands_in(std::string_view word, std::string_view text) {
  const text::Words words(text);
  return std::any_of(words.begin(), words.end(),
                     [&](const Word& w) { return text::singular(w.text) == word; });
}

/// True if the tested process itself speaks of the food: the liquid it is covered with, what it asks to do.
bool of_the_process(const foods::Food& food, std::string_view word, const Reading& reading) {
  const tested::Product* product = reading.match.product;
  if (product == nullptr) return false;
  const auto says = [&](std::string_view text) {
    return stands_in(word, text) || stands_in(last_word(food.name), text);
  };
  return says(product->title) || says(product->covering) ||
         std::any_of(product->required.begin(), product->required.end(), says) ||
         std::any_of(product->foods.begin(), product->foods.end(),
                     [&](const std::string& id) { return reading.catalogue->is_a(food, id); });
}

/// True if a word of the title ends with the food's: "hot jam" of a jam, "hot sauce" of applesauce.
bool is_the_recipe(std::string_view word, const Reading& reading) {
  constexpr std::size_t least = 3;
  const text::Words title(reading.recipe->title.value);
  return word.size() >= least && std::any_of(title.begin(), title.end(), [&](const Word& one) {
           return text::singular(one.text).ends_with(word);
         });
}

/// True if the list of ingredients, or the title, has the food, a kind of it or its word.
bool listed(const foods::Food& food, std::string_view name, const Reading& reading) {
  const auto word = last_word(name);
  if (stands_in(word, reading.recipe->title.value) || of_the_process(food, word, reading) ||
      is_the_recipe(word, reading))
    return true;
  return std::any_of(reading.ingredients.begin(), reading.ingredients.end(), [&](const auto& ingredient) {
    if (ingredient.line != nullptr && stands_in(word, ingredient.line->text)) return true;
    return std::any_of(
        ingredient.read.foods.begin(), ingredient.read.foods.end(), [&](const foods::Named& named) {
          if (named.food == nullptr) return false;
          const auto& catalogue = *reading.catalogue;
          return catalogue.is_a(food, named.food->id) || catalogue.is_a(*named.food, food.id) ||
                 (!food.parent.empty() && food.parent == named.food->parent) || named.food->kind == word;
        });
  });
}

class FoodInSteps final : public Check {
 public:
  FoodInSteps(std::span<const Rule* const> rules, Maker& maker) {
    for (const Rule* rule : rules) {
      Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
      Entry entry{rule,
                  with.list("verbs"),
                  with.list("exchange"),
                  with.list("particles"),
                  with.list("until"),
                  Phrases(with.list("changes")),
                  last_words(with.list("changes")),
                  Phrases(with.list("unless")),
                  maker.food_index->read_plain(with, "except")};
      if (const auto* general = with.find("general")) {
        Fields words(*general, "rule " + rule->id + ", general", {rule->file, maker.errors});
        for (const auto& word : general->entries)
          entry.general.emplace_back(std::string(word.key), maker.food_index->read_plain(words, word.key));
        words.done();
      }
      with.done();
      if (entry.verbs.empty()) with.sink().add(rule->at, "rule " + rule->id + ": 'verbs' is missing");
      entries_.push_back(std::move(entry));
    }
  }

  void run(const Reading& reading, Results& results) const override {
    for (const Entry& entry : entries_) {
      if (!applies(entry.rule->only_if, reading)) continue;
      std::vector<std::string> told;
      for (const auto& step : reading.steps)
        for (const auto& sentence : step.sentences.all) look(entry, reading, step, sentence, told, results);
    }
  }

 private:
  static void look(const Entry& entry, const Reading& reading, const reading::StepText& step,
                   const reading::Sentence& sentence, std::vector<std::string>& told, Results& results) {
    const auto& words = step.sentences.words;
    if (sentence.question || sentence.last == sentence.first) return;
    bool any = false, may_change = false;
    for (std::size_t i = sentence.first; i < sentence.last; ++i) {
      any = any || entry.is_verb(words[i].text);
      may_change = may_change || one_of(words[i].text, entry.change_ends);
    }
    if (!any && !may_change) return;
    const auto begin = words[sentence.first].begin;
    const text::Words whole(step.text.substr(begin, words[sentence.last - 1].end - begin));
    const bool change =
        !entry.changes.in(whole).empty() && !denied(words, sentence.last, sentence.first, sentence.last);
    if ((!any && !change) || !entry.unless.in(whole).empty()) return;
    if (change)
      for (const auto piece : pieces(entry, step, sentence))
        put_in(entry, reading, step, piece, told, results);
    for (std::size_t i = sentence.first; i < sentence.last; ++i)
      if (entry.is_verb(words[i].text) && !denied(words, i, sentence.first))
        for (const auto piece : objects(entry, step, i, sentence.last))
          put_in(entry, reading, step, piece, told, results);
  }

  /// A sentence without its commas, "and", "or", verbs and what parts them: "Mangoes", "avocado", "peaches
  /// make a nice change"; "half the tomatoes can be", "roasted eggplant".
  static std::vector<std::string_view> pieces(const Entry& entry, const reading::StepText& step,
                                              const reading::Sentence& sentence) {
    const auto& words = step.sentences.words;
    std::vector<std::string_view> found;
    std::size_t from = sentence.first;
    for (std::size_t to = from; to <= sentence.last; ++to) {
      const bool joint =
          to < sentence.last && (words[to].text == "and" || words[to].text == "or" ||
                                 entry.is_verb(words[to].text) || one_of(words[to].text, entry.until));
      const bool parted = to == sentence.last || joint || (to > from && words[to].before != 0);
      if (!parted) continue;
      if (to > from)
        found.push_back(step.text.substr(words[from].begin, words[to - 1].end - words[from].begin));
      from = joint ? to + 1 : to;
    }
    return found;
  }

  /// What stands behind a verb, each item of a list by itself: "2 cups corn", "1 onion".
  static std::vector<std::string_view> objects(const Entry& entry, const reading::StepText& step,
                                               std::size_t verb, std::size_t last) {
    const auto& words = step.sentences.words;
    const bool exchange = one_of(words[verb].text, entry.exchange);
    std::size_t from = verb + 1;
    while (from < last && one_of(words[from].text, entry.particles)) ++from;
    std::vector<std::string_view> found;
    const auto close = [&](std::size_t to) {
      if (to > from)
        found.push_back(step.text.substr(words[from].begin, words[to - 1].end - words[from].begin));
    };
    std::size_t to = from;
    for (; to < last; ++to) {
      const Word& word = words[to];
      const bool until = one_of(word.text, entry.until);
      const bool parted = to > from && word.before != 0 && word.before != ',';
      if (parted || entry.is_verb(word.text) || (until && !exchange)) break;
      const bool joins = until || word.text == "and";
      if (!joins && (word.before != ',' || to == from)) continue;
      close(to);
      from = joins ? to + 1 : to;
    }
    close(to);
    return found;
  }

  static void put_in(const Entry& entry, const Reading& reading, const reading::StepText& step,
                     std::string_view text, std::vector<std::string>& told, Results& results) {
    for (const auto& named : reading.catalogue->read_line(text, reading.recipe->units).foods) {
      if (named.food == nullptr || named.food->acid_class == foods::AcidClass::neutral) continue;
      if (entry.except.has(*named.food) || listed(*named.food, named.name, reading) ||
          entry.meant_by(*named.food, reading))
        continue;
      if (one_of(named.name, told)) continue;
      told.push_back(named.name);
      results.add(*entry.rule, step.at, {{"food", named.name}});
      results.point(PointKind::food, Point::State::unknown);
    }
  }

  std::vector<Entry> entries_;
};

}  // namespace

std::unique_ptr<Check> make_food_in_steps(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<FoodInSteps>(rules, maker);
}

}  // namespace sealworthy::checks
