#include "foods/loader.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "foods/each_word.hpp"
#include "foods/fields.hpp"
#include "text/nearest.hpp"

namespace sealworthy::foods {
namespace {

constexpr std::array<std::string_view, 5> top_keys{"foods", "states", "line-words", "food-sources",
                                                   "food-cautions"};
constexpr std::array<std::string_view, 13> food_keys{"id",          "name",    "names",   "kind", "class",
                                                     "guide-class", "parent",  "tags",    "ph",   "acid",
                                                     "measures",    "instead", "cautions"};

constexpr std::array<std::pair<std::string_view, AcidClass>, 4> classes{
    {{"acid", AcidClass::acid},
     {"borderline", AcidClass::borderline},
     {"low-acid", AcidClass::low_acid},
     {"neutral", AcidClass::neutral}}};

constexpr std::array<std::string_view, 4> guide_classes{"", "acid", "acidified", "none"};

Read read_of(const yaml::Node& map, Fields& fields) {
  const auto said = fields.text(map, "read");
  for (const auto read : {Read::original, Read::reprint, Read::memory})
    if (said == to_string(read)) return read;
  fields.error(map.at, "'read' is original, reprint or memory");
  return Read::memory;
}

/// Names of foods are recognised too, but for those written for people only: "Heart, tongue and other organ
/// meats", "Pike, walleye or perch", "Pepper (vegetable), kind not stated".
bool name_is_said(std::string_view name) {
  return name.find_first_of(",(") == std::string_view::npos && name.find(" or ") == std::string_view::npos;
}

void read_ph(const yaml::Node& list, Food& food, Fields& fields) {
  static constexpr std::array<std::string_view, 6> keys{"low", "high", "as", "source", "read", "natural"};
  for (const auto& row : fields.items(list)) {
    if (!fields.known_keys(row, keys)) continue;
    const auto low = fields.number(row, "low");
    const auto high = fields.number(row, "high");
    fields.text(row, "as");
    read_of(row, fields);
    if (!low || !high || *low > *high || *low < 0 || *high > 14) {
      fields.error(row.at, "a pH range runs from 'low' to 'high', between 0 and 14");
      continue;
    }
    const auto* natural = row.find("natural");
    if (natural != nullptr && !fields.flag(row, "natural")) continue;
    const Interval<double> range{*low, *high};
    food.ph = food.ph ? hull(*food.ph, range) : range;
  }
}

void read_acid(const yaml::Node& map, Food& food, Fields& fields) {
  static constexpr std::array<std::string_view, 6> keys{"of", "percent", "low", "high", "source", "read"};
  if (!fields.known_keys(map, keys)) return;
  fields.text(map, "of");
  read_of(map, fields);
  food.acid_percent = fields.number(map, "percent");
  const auto low = fields.number(map, "low");
  const auto high = fields.number(map, "high");
  if (low || high) food.acid_range = Interval<double>{low.value_or(*high), high.value_or(*low)};
}

void read_measure(const yaml::Node& row, Food& food, Fields& fields) {
  static constexpr std::array<std::string_view, 8> keys{"form", "cup",    "tbsp", "tsp",
                                                        "each", "source", "ndb",  "read"};
  if (!fields.known_keys(row, keys)) return;
  Measure measure;
  measure.form = fields.text(row, "form");
  measure.cup_g = fields.number(row, "cup");
  measure.tbsp_g = fields.number(row, "tbsp");
  measure.tsp_g = fields.number(row, "tsp");
  read_of(row, fields);
  if (const auto* each = row.find("each"))
    for (const auto& entry : each->entries)
      if (const auto grams = fields.number(*each, entry.key)) measure.each_g.emplace_back(entry.key, *grams);
  if (!measure.cup_g && !measure.tbsp_g && !measure.tsp_g && measure.each_g.empty())
    fields.error(row.at, "a measure gives grams of a 'cup', 'tbsp', 'tsp' or of 'each' piece");
  food.measures.push_back(std::move(measure));
}

/// The states that a measure's form tells: "raw, peeled, sliced".
std::vector<StateId> states_of(std::string_view form, const Index& index) {
  std::vector<StateId> found;
  std::vector<WordId> words;
  each_word(form, [&](std::string_view word) { words.push_back(index.lexicon.find(word)); });
  for (std::size_t at = 0; at < words.size();) {
    Trie::Node node = Trie::root;
    std::size_t length = 1;
    StateId state = no_state;
    for (std::size_t i = at; i < words.size() && words[i] != no_word; ++i) {
      node = index.phrases.child(node, words[i]);
      if (node == Trie::none) break;
      if (index.phrases.meaning(node).state == no_state) continue;
      state = index.phrases.meaning(node).state;
      length = i - at + 1;
    }
    if (state != no_state) found.push_back(state);
    at += length;
  }
  return found;
}

}  // namespace

void Loader::load(std::string_view file, const yaml::Document& document, Index& index,
                  std::vector<LoadError>& errors) {
  Fields fields{file, errors};
  if (!fields.known_keys(document.root(), top_keys)) return;
  arenas_.push_back(document.arena());
  files_.push_back(std::make_unique<std::string>(file));
  const std::string_view kept = *files_.back();
  const auto& root = document.root();
  if (const auto* states = root.find("states"))
    index.phrases.load_states(*states, kept, index.lexicon, errors);
  if (const auto* words = root.find("line-words"))
    index.phrases.load_words(*words, kept, index.lexicon, errors);
  if (const auto* sources = root.find("food-sources"))
    for (const auto& entry : sources->entries) sources_.push_back({entry.key, &entry.value, kept});
  if (const auto* cautions = root.find("food-cautions"))
    for (const auto& item : fields.items(*cautions))
      if (const auto id = fields.text(item, "id"); !id.empty()) cautions_.push_back({id, &item, kept});
  if (const auto* foods = root.find("foods"))
    for (const auto& item : fields.items(*foods)) load_food(item, kept, index, errors);
}

void Loader::load_food(const yaml::Node& node, std::string_view file, Index& index,
                       std::vector<LoadError>& errors) {
  Fields fields{file, errors};
  if (!fields.known_keys(node, food_keys)) return;
  Food food;
  food.id = fields.text(node, "id");
  food.name = fields.text(node, "name");
  food.kind = fields.text(node, "kind");
  if (food.id.empty()) return;
  const auto said = fields.text(node, "class");
  const auto known =
      std::find_if(classes.begin(), classes.end(), [&](const auto& entry) { return entry.first == said; });
  if (known == classes.end())
    fields.error(node.at, "'class' is acid, borderline, low-acid or neutral");
  else
    food.acid_class = known->second;
  food.guide_class = fields.text_or(node, "guide-class");
  if (std::find(guide_classes.begin(), guide_classes.end(), food.guide_class) == guide_classes.end())
    fields.error(node.find("guide-class")->at, "'guide-class' is acid, acidified or none");
  for (const auto& tag : fields.list(node, "tags")) food.tags.emplace_back(tag.text);
  if (const auto* ph = node.find("ph")) read_ph(*ph, food, fields);
  if (const auto* acid = node.find("acid")) read_acid(*acid, food, fields);
  if (const auto* measures = node.find("measures"))
    for (const auto& row : fields.items(*measures)) read_measure(row, food, fields);
  food.parent = fields.text_or(node, "parent");
  ids_.emplace_back(node.find("id")->text, static_cast<FoodId>(index.foods.size()));
  index.foods.push_back(std::move(food));
  entries_.push_back({&node, file});
}

FoodId Loader::find(std::string_view id) const {
  const auto found =
      std::lower_bound(ids_.begin(), ids_.end(), id,
                       [](const auto& entry, std::string_view key) { return entry.first < key; });
  return found != ids_.end() && found->first == id ? found->second : no_food;
}

const Loader::Named* Loader::named(const std::vector<Named>& sorted, std::string_view key) {
  const auto found = std::lower_bound(sorted.begin(), sorted.end(), key,
                                      [](const Named& entry, std::string_view k) { return entry.key < k; });
  return found != sorted.end() && found->key == key ? &*found : nullptr;
}

std::string_view Loader::source(const yaml::Node& map, std::string_view file,
                                std::vector<LoadError>& errors) const {
  const auto* key = map.find("source");
  if (key == nullptr) return {};
  if (const auto* known = named(sources_, key->text)) return known->node->text;
  Fields{file, errors}.error(key->at, "no source is called '" + std::string(key->text) + "'",
                             "the sources stand under 'food-sources:'");
  return {};
}

void Loader::add_name(FoodId food, std::string_view name, Position at, Index& index,
                      std::vector<LoadError>& errors) {
  Trie::Node node = Trie::root;
  bool plural = false;
  WordId last = no_word;
  int words = 0;
  each_word(name, [&](std::string_view word) {
    const WordId id = index.lexicon.intern(word);
    const WordId lemma = index.lexicon.entry(id).lemma;
    index.lexicon.entry(id).of_food = true;
    index.lexicon.entry(lemma).of_food = true;
    plural = lemma != id;
    last = id;
    ++words;
    node = index.names.add(node, lemma);
  });
  if (words == 1) index.lexicon.entry(index.lexicon.entry(last).lemma).whole_name = true;
  if (index.name_ends.size() <= node) index.name_ends.resize(node + 1024);
  auto& ends = index.name_ends[node];
  FoodId& end = plural ? ends.many : ends.one;
  WordId& word = plural ? ends.many_word : ends.one_word;
  const bool other_spelling = end == food && word != last;  // "mangoes" and "mangos"
  if (end != no_food && !other_spelling) {
    Fields fields{entries_[food].file, errors};
    fields.error(at, "the name '" + std::string(name) + "' is given twice",
                 "it already names '" + index.foods[end].id + "'");
    return;
  }
  end = food;
  word = last;
}

void Loader::add_names(FoodId food, Index& index, std::vector<LoadError>& errors) {
  const auto& node = *entries_[food].node;
  Fields fields{entries_[food].file, errors};
  const auto& name = index.foods[food].name;
  if (name_is_said(name)) add_name(food, name, node.at, index, errors);
  for (const auto& other : fields.list(node, "names")) add_name(food, other.text, other.at, index, errors);
}

void Loader::read_cautions(const yaml::Node& list, std::string_view file, Food& food,
                           std::vector<LoadError>& errors) const {
  static constexpr std::array<std::string_view, 4> keys{"id", "says", "source", "read"};
  Fields fields{file, errors};
  for (const auto& item : fields.items(list)) {
    const yaml::Node* caution = &item;
    auto from = file;
    if (item.is_scalar()) {
      const auto* shared = named(cautions_, item.text);
      if (shared == nullptr) {
        fields.error(item.at, "no caution is called '" + std::string(item.text) + "'");
        continue;
      }
      caution = shared->node;
      from = shared->file;
    }
    Fields own{from, errors};
    if (!own.known_keys(*caution, keys)) continue;
    food.cautions.push_back({std::string(own.text(*caution, "says")),
                             std::string(source(*caution, from, errors)), read_of(*caution, own)});
  }
}

void Loader::read_instead(const yaml::Node& list, FoodId food, Index& index,
                          std::vector<LoadError>& errors) const {
  static constexpr std::array<std::string_view, 5> keys{"food", "names", "states", "units", "not-units"};
  Fields fields{entries_[food].file, errors};
  for (const auto& item : fields.items(list)) {
    if (!fields.known_keys(item, keys)) continue;
    Instead instead;
    instead.food = find(fields.text(item, "food"));
    if (instead.food == no_food) fields.error(item.at, "'food' names no food of the catalogue");
    for (const auto& name : fields.list(item, "names")) {
      Trie::Node node = Trie::root;
      each_word(name.text, [&](std::string_view word) {
        const WordId id = index.lexicon.find(word);
        if (node != Trie::none)
          node = id == no_word ? Trie::none : index.names.child(node, index.lexicon.entry(id).lemma);
      });
      if (node == Trie::none || index.food_at(node, false) != food)
        fields.error(name.at, "'" + std::string(name.text) + "' is no name of this food");
      else
        instead.names.push_back(node);
    }
    for (const auto& name : fields.list(item, "states")) {
      const StateId state = index.phrases.find_state(name.text);
      if (state == no_state)
        fields.error(name.at, "no state is called '" + std::string(name.text) + "'");
      else
        instead.states.push_back(state);
    }
    for (const auto& unit : fields.list(item, "units")) instead.units.emplace_back(unit.text);
    for (const auto& unit : fields.list(item, "not-units")) instead.not_units.emplace_back(unit.text);
    if (instead.states.empty() && instead.units.empty())
      fields.error(item.at, "'instead' needs 'states' or 'units' that tell when");
    if (instead.food != no_food) index.instead[food].push_back(std::move(instead));
  }
}

void Loader::resolve(FoodId food, Index& index, std::vector<LoadError>& errors) {
  const auto& [node, file] = entries_[food];
  Fields fields{file, errors};
  auto& self = index.foods[food];
  if (!self.parent.empty()) {
    index.parents[food] = find(self.parent);
    if (index.parents[food] == no_food)
      fields.error(node->find("parent")->at, "no food is called '" + self.parent + "'");
  }
  for (const auto* rows : {node->find("ph"), node->find("measures")})
    if (rows != nullptr)
      for (const auto& row : rows->items) source(row, file, errors);
  if (const auto* acid = node->find("acid")) source(*acid, file, errors);
  if (const auto* cautions = node->find("cautions")) read_cautions(*cautions, file, self, errors);
  if (const auto* instead = node->find("instead")) read_instead(*instead, food, index, errors);
  for (auto& measure : self.measures) {
    auto& states = index.measure_states[food].emplace_back(states_of(measure.form, index));
    for (const auto state : states) measure.states.push_back(index.phrases.state(state).name);
  }
}

void Loader::finish(Index& index, std::vector<LoadError>& errors) {
  std::sort(ids_.begin(), ids_.end());
  for (auto* table : {&sources_, &cautions_})
    std::sort(table->begin(), table->end(), [](const Named& a, const Named& b) { return a.key < b.key; });
  for (std::size_t i = 1; i < ids_.size(); ++i)
    if (ids_[i].first == ids_[i - 1].first) {
      const auto& entry = entries_[ids_[i].second];
      Fields{entry.file, errors}.error(entry.node->at,
                                       "the id '" + std::string(ids_[i].first) + "' is given twice");
    }
  const auto count = static_cast<FoodId>(index.foods.size());
  index.instead.resize(count);
  index.measure_states.resize(count);
  index.parents.assign(count, no_food);
  index.phrases.finish(index.lexicon.size(), errors);
  for (FoodId food = 0; food < count; ++food) add_names(food, index, errors);
  for (FoodId food = 0; food < count; ++food) resolve(food, index, errors);
  for (FoodId food = 0; food < count; ++food) {
    FoodId at = food;
    for (int steps = 0; at != no_food; ++steps, at = index.parents[at])
      if (steps > 16) {
        Fields{entries_[food].file, errors}.error(entries_[food].node->at, "a food is its own ancestor");
        index.parents[food] = no_food;
        break;
      }
  }
  index.lexicon.add_plurals();
  index.name_first.resize(index.lexicon.size());
  for (WordId word = 0; word < index.lexicon.size(); ++word)
    index.name_first[word] = index.names.child(Trie::root, word);
  index.slips.build(index.lexicon);
}

}  // namespace sealworthy::foods
