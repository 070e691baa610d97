#include "tested/find_words.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <tuple>

#include "text/nearest.hpp"
#include "text/words.hpp"

namespace sealworthy::tested {
namespace {

/// Words that a title holds or lacks by chance: they rank, but need not fit.
constexpr std::array<std::string_view, 17> small{"a",    "an", "and",  "canned", "canning", "for",
                                                 "home", "in", "jar",  "of",     "on",      "or",
                                                 "the",  "to", "with", "my",     "without"};

bool is_small(std::string_view word) { return std::find(small.begin(), small.end(), word) != small.end(); }

using Bag = std::vector<std::string>;  // sorted singular words

void add_words(std::string_view text, Bag& bag) {
  for (const auto& word : text::Words(text)) bag.push_back(text::singular(word.text));
}

Bag bag_of(const Product& product) {
  Bag bag;
  add_words(product.title, bag);
  add_words(product.id, bag);
  for (const auto& style : product.styles) add_words(style, bag);
  for (const auto& name : product.identity.names) add_words(name, bag);
  std::sort(bag.begin(), bag.end());
  bag.erase(std::unique(bag.begin(), bag.end()), bag.end());
  return bag;
}

/// "slice" and "sliced" are one word here.
bool holds(const Bag& bag, const std::string& word) {
  const auto has = [&](const std::string& form) { return std::binary_search(bag.begin(), bag.end(), form); };
  if (has(word) || has(word + "d") || has(word + "ed")) return true;
  return word.ends_with("ed") &&
         (has(word.substr(0, word.size() - 1)) || has(word.substr(0, word.size() - 2)));
}

/// A run of words that names a food.
struct Phrase {
  const foods::Food* food;
  std::size_t begin;
  std::size_t end;
  /// Words in it that name another food and are no part of this one's name: "strawberry jam" may be a name of
  /// jam, but a jam of plums is none of strawberries.
  std::vector<std::size_t> apart;
};

std::vector<Phrase> phrases_of(const foods::Catalogue& catalogue, const std::vector<std::string>& words) {
  constexpr std::size_t longest = 5;
  std::vector<Phrase> phrases;
  for (std::size_t begin = 0; begin < words.size(); ++begin) {
    std::string text;
    for (std::size_t end = begin; end < std::min(words.size(), begin + longest); ++end) {
      text += (text.empty() ? "" : " ") + words[end];
      if (const auto* food = catalogue.named(text)) phrases.push_back({food, begin, end + 1, {}});
    }
  }
  for (auto& phrase : phrases) {
    Bag name;
    add_words(phrase.food->name, name);
    std::sort(name.begin(), name.end());
    for (const auto& other : phrases)
      if (other.end == other.begin + 1 && phrase.begin <= other.begin && other.end <= phrase.end &&
          other.food != phrase.food && !holds(name, text::singular(words[other.begin])))
        phrase.apart.push_back(other.begin);
  }
  return phrases;
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  for (const auto& word : text::Words(text)) words.emplace_back(word.text);
  return words;
}

struct Known {
  const Product* product;
  Bag bag;
  std::vector<const foods::Food*> foods;
  std::vector<const foods::Food*>
      titled;  ///< foods that the title names ("Sauerkraut"), once they are wanted
};

Known known(const Product& product, const foods::Catalogue& catalogue) {
  Known known{&product, bag_of(product), {}, {}};
  for (const auto& id : product.foods)
    if (const auto* food = catalogue.find(id)) known.foods.push_back(food);
  return known;
}

/// A kind of a food is found under the food and the other way round; but a kind that has no tested process
/// (white peaches) is not found under one that has.
bool related(const foods::Catalogue& catalogue, const foods::Food& asked, const foods::Food& has) {
  if (&asked == &has) return true;
  return (asked.guide_class != "none" && catalogue.is_a(asked, has.id)) || catalogue.is_a(has, asked.id);
}

/// How well a product fits: more is better, from the first member on.
struct Fit {
  const Product* product = nullptr;
  std::size_t fitting = 0;  ///< words that fit, small ones aside
  std::size_t asked = 0;    ///< words that should
  bool exact = false;       ///< id, title or a name of its own
  bool main_food = false;
  bool food = false;        ///< of its foods, not of its title only
  bool on_its_own = false;  ///< no formula
  std::size_t in_title = 0;
  std::size_t foods = 0;
  std::vector<bool> covered;

  [[nodiscard]] auto rank() const {
    return std::tuple(exact, fitting, main_food, food, on_its_own, in_title, -static_cast<int>(foods));
  }
};

class Search {
 public:
  Search(const foods::Catalogue& catalogue, std::string_view text)
      : catalogue_(catalogue), folded_(text::fold(text)), words_(words_of(text)) {
    for (const auto& word : words_) singular_.push_back(text::singular(word));
    phrases_ = phrases_of(catalogue, words_);
    // A name with a comma in it: "Mango, green".
    if (const auto* food = catalogue.named(text)) phrases_.push_back({food, 0, words_.size(), {}});
  }

  /// True if a name of several words is only half covered: "spaghetti squash" by squash.
  [[nodiscard]] bool splits_a_name(const Fit& fit) const {
    return std::any_of(phrases_.begin(), phrases_.end(), [&](const Phrase& phrase) {
      const auto covered = std::count(fit.covered.begin() + static_cast<std::ptrdiff_t>(phrase.begin),
                                      fit.covered.begin() + static_cast<std::ptrdiff_t>(phrase.end), true);
      return covered > 0 && covered < static_cast<std::ptrdiff_t>(phrase.end - phrase.begin);
    });
  }

  [[nodiscard]] Fit fit(const Known& known) const {
    const Product& product = *known.product;
    Fit fit;
    fit.product = &product;
    fit.exact = is_name(product);
    fit.on_its_own = !product.formula;
    fit.foods = product.foods.size();
    fit.covered.assign(words_.size(), false);
    for (std::size_t i = 0; i < words_.size(); ++i)
      if (holds(known.bag, singular_[i])) {
        fit.covered[i] = true;
        ++fit.in_title;
      }
    for (const auto& phrase : phrases_) {
      for (const auto* food : known.titled) cover(phrase, *food, fit);
      for (const auto* food : known.foods)
        // What stands for many (a jam to be cooked again) is found under its own title only.
        if (cover(phrase, *food, fit) && food->kind != "condiment") {
          fit.food = true;
          fit.main_food = fit.main_food || food == known.foods.front();
        }
    }
    for (std::size_t i = 0; i < words_.size(); ++i)
      if (!is_small(words_[i])) {
        ++fit.asked;
        if (fit.covered[i]) ++fit.fitting;
      }
    if (fit.exact) fit.fitting = fit.asked;
    return fit;
  }

  [[nodiscard]] const std::vector<std::string>& words() const { return words_; }
  [[nodiscard]] const std::vector<std::string>& singular() const { return singular_; }
  [[nodiscard]] bool names_food(std::size_t word) const {
    return std::any_of(phrases_.begin(), phrases_.end(),
                       [&](const Phrase& p) { return p.begin <= word && word < p.end; });
  }

 private:
  /// Marks the words of a phrase that names a food of the product; false where it names another.
  bool cover(const Phrase& phrase, const foods::Food& has, Fit& fit) const {
    if (!related(catalogue_, *phrase.food, has)) return false;
    for (auto i = phrase.begin; i < phrase.end; ++i)
      if (std::find(phrase.apart.begin(), phrase.apart.end(), i) == phrase.apart.end()) fit.covered[i] = true;
    return true;
  }

  [[nodiscard]] bool is_name(const Product& product) const {
    if (folded_ == text::fold(product.id) || folded_ == text::fold(product.title)) return true;
    return std::any_of(product.identity.names.begin(), product.identity.names.end(),
                       [&](const std::string& name) { return folded_ == text::fold(name); });
  }

  const foods::Catalogue& catalogue_;
  std::string folded_;
  std::vector<std::string> words_;
  std::vector<std::string> singular_;
  std::vector<Phrase> phrases_;
};

std::vector<Fit> fits(const Search& search, const std::vector<Known>& all) {
  std::vector<Fit> found;
  for (const auto& known : all)
    if (auto fit = search.fit(known); fit.exact || fit.fitting > 0) found.push_back(std::move(fit));
  std::stable_sort(found.begin(), found.end(),
                   [](const Fit& a, const Fit& b) { return a.rank() > b.rank(); });
  return found;
}

bool whole(const Fit& fit) { return fit.asked > 0 && fit.fitting == fit.asked; }

/// The query with words that nothing knows put right, as far as something near is known.
std::string put_right(const Search& search, const std::vector<Known>& all) {
  std::set<std::string, std::less<>> vocabulary;
  for (const auto& known : all) {
    vocabulary.insert(known.bag.begin(), known.bag.end());
    for (const auto* food : known.foods)
      for (auto& word : words_of(food->name)) vocabulary.insert(text::singular(word));
  }
  const std::vector<std::string_view> candidates(vocabulary.begin(), vocabulary.end());
  std::string text;
  for (std::size_t i = 0; i < search.words().size(); ++i) {
    std::string_view word = search.words()[i];
    if (!is_small(word) && !vocabulary.contains(search.singular()[i]) && !search.names_food(i))
      if (const auto near = text::nearest(search.singular()[i], candidates)) word = *near;
    text.append(text.empty() ? "" : " ").append(word);
  }
  return text;
}

std::string words_where(const Search& search, const Fit& fit, bool covered) {
  std::string text;
  for (std::size_t i = 0; i < fit.covered.size(); ++i)
    if (fit.covered[i] == covered && (covered || !is_small(search.words()[i])))
      text.append(text.empty() ? "" : " ").append(search.words()[i]);
  return text;
}

std::vector<const Product*> fitting(const std::vector<Fit>& fits, std::size_t words) {
  std::vector<const Product*> products;
  for (const auto& fit : fits)
    if (fit.exact || fit.fitting >= words) products.push_back(fit.product);
  return products;
}

class Finder {
 public:
  Finder(const Tables& tables, const foods::Catalogue& catalogue) : catalogue_(catalogue) {
    for (const auto& product : tables.products()) all_.push_back(known(product, catalogue));
  }

  /// Products that every word fits; foods that only a title names are the last resort.
  std::vector<const Product*> whole_fits(const Search& search) {
    for (const bool with_titles : {false, true}) {
      if (with_titles) name_titles();
      const auto found = fits(search, all_);
      if (!found.empty() && (found.front().exact || whole(found.front())))
        return fitting(found, found.front().asked);
    }
    return {};
  }

  Found find(std::string_view words) {
    const Search search(catalogue_, words);
    if (auto products = whole_fits(search); !products.empty()) return {std::move(products), {}, {}};
    const auto text = put_right(search, all_);
    const Search again(catalogue_, text);
    if (auto products = whole_fits(again); !products.empty()) return {std::move(products), text, {}};
    return part_of(search);
  }

 private:
  /// Products that fit most of the words, told with the words left out; none where that would be a guess.
  [[nodiscard]] Found part_of(const Search& search) const {
    const auto found = fits(search, all_);
    if (found.empty()) return {};
    const auto& best = found.front();
    if (best.fitting * 2 < best.asked || search.splits_a_name(best)) return {};
    Found part{{}, words_where(search, best, true), words_where(search, best, false)};
    for (const auto& fit : found)
      if (fit.fitting == best.fitting && fit.covered == best.covered) part.products.push_back(fit.product);
    return part;
  }

  void name_titles() {
    if (titles_named_) return;
    titles_named_ = true;
    for (auto& known : all_)
      for (const auto& phrase : phrases_of(catalogue_, words_of(known.product->title)))
        known.titled.push_back(phrase.food);
  }

  const foods::Catalogue& catalogue_;
  std::vector<Known> all_;
  bool titles_named_ = false;
};

}  // namespace

Found find_by_words(const Tables& tables, const foods::Catalogue& catalogue, std::string_view words) {
  if (const auto* product = tables.find(words)) return {{product}, {}, {}};
  return Finder(tables, catalogue).find(words);
}

}  // namespace sealworthy::tested
