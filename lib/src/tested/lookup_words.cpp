#include "tested/lookup_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "quantity/figures.hpp"
#include "recipe/kitchen.hpp"
#include "text/words.hpp"

namespace sealworthy::tested {
namespace {

constexpr unsigned bit(TableMethod method) { return 1U << static_cast<unsigned>(method); }

/// The tables that a method's word leads to; steam uses those of boiling water.
unsigned tables_of(const reading::MethodWord& method) {
  using reading::MethodKind;
  switch (method.kind) {
    case MethodKind::boiling_water:
    case MethodKind::steam:
      return bit(TableMethod::boiling_water);
    case MethodKind::pressure:
      if (!method.gauge) return bit(TableMethod::pressure_dial) | bit(TableMethod::pressure_weighted);
      return *method.gauge == recipe::Gauge::dial ? bit(TableMethod::pressure_dial)
                                                  : bit(TableMethod::pressure_weighted);
    default:
      return 0;
  }
}

std::optional<InputError> read_method(const LookupQuery& query, const LookupRules& rules,
                                      LookupWords& asked) {
  if (query.method.empty()) return std::nullopt;
  const auto* method = rules.methods.find(query.method);
  if (method == nullptr)
    return InputError{"",
                      {},
                      "'" + query.method + "' is no canning method that is known",
                      "say boiling water, steam, pressure, dial gauge or weighted gauge"};
  asked.methods = tables_of(*method);
  asked.only_steam = method->kind == reading::MethodKind::steam;
  asked.method_name = method->name;
  if (asked.methods != 0) return std::nullopt;
  return InputError{
      "",
      {},
      "no table is published for " + method->name,
      "tables exist for boiling-water canners, and for pressure canners with a dial or a weighted gauge"};
}

/// The canners at hand limit the methods, unless one is asked for.
void limit_to_canners(const recipe::Kitchen& kitchen, const LookupRules& rules, LookupWords& asked) {
  if (kitchen.canners.empty() || !asked.method_name.empty()) return;
  unsigned at_hand = 0;
  bool boiling = false;
  for (const auto& canner : kitchen.canners) {
    const auto* method = rules.methods.find(canner.kind.value);
    if (method == nullptr) continue;
    auto tables = tables_of(*method);
    if (canner.gauge && method->kind == reading::MethodKind::pressure)
      tables = canner.gauge->value == recipe::Gauge::dial ? bit(TableMethod::pressure_dial)
                                                          : bit(TableMethod::pressure_weighted);
    at_hand |= tables;
    boiling = boiling || method->kind == reading::MethodKind::boiling_water;
  }
  if (at_hand == 0) return;
  asked.methods = at_hand;
  asked.only_steam = !boiling && (at_hand & bit(TableMethod::boiling_water)) != 0;
  asked.method_name = "the canners of this kitchen";
}

std::optional<InputError> read_jar(std::string_view text, const Tables& tables, LookupWords& asked) {
  const auto read = quantity::read_jar(text);
  if (const auto* error = std::get_if<quantity::FigureError>(&read))
    return InputError{"", {}, error->message, error->suggestion};
  asked.jar = tables.jar_size(std::get<quantity::JarText>(read));
  if (!asked.jar)
    return InputError{
        "", {}, "no process is published for a jar as large as '" + std::string(text) + "'", ""};
  return std::nullopt;
}

/// Takes jar sizes and "raw pack" out of the words; what is left names the product.
void sift_words(std::string_view text, const Tables& tables, LookupWords& asked) {
  const text::Words words(text);
  std::vector<bool> taken(words.size(), false);
  const auto slice = [&](std::size_t first, std::size_t last) {
    return text.substr(words[first].begin, words[last].end - words[first].begin);
  };
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    const bool pack = words[i + 1].text == "pack" || words[i + 1].text == "packed";
    if (!pack || (words[i].text != "hot" && words[i].text != "raw")) continue;
    if (!asked.pack) asked.pack = words[i].text == "hot" ? recipe::Pack::hot : recipe::Pack::raw;
    taken[i] = taken[i + 1] = true;
  }
  for (std::size_t length : {3U, 2U, 1U})
    for (std::size_t i = 0; i + length <= words.size() && !asked.jar; ++i) {
      const auto read = quantity::read_jar(slice(i, i + length - 1));
      const auto* jar = std::get_if<quantity::JarText>(&read);
      const auto size = jar != nullptr ? tables.jar_size(*jar) : std::nullopt;
      if (!size) continue;
      asked.jar = size;
      std::fill_n(taken.begin() + static_cast<std::ptrdiff_t>(i), length, true);
    }
  if (std::find(taken.begin(), taken.end(), true) == taken.end()) {
    asked.words = words.empty() ? "" : text;
    return;
  }
  for (std::size_t i = 0; i < words.size(); ++i)
    if (!taken[i]) asked.words.append(asked.words.empty() ? "" : " ").append(slice(i, i));
}

bool holds(const HeadspaceRule& rule, std::string_view pack, JarIndex jar) {
  if (rule.jar && *rule.jar != jar) return false;
  return !rule.pack || pack.empty() || (*rule.pack == recipe::Pack::hot) == (pack == "hot");
}

std::string lower_first(std::string text) {
  if (!text.empty() && text[0] >= 'A' && text[0] <= 'Z') text[0] = static_cast<char>(text[0] - 'A' + 'a');
  return text;
}

std::string amount_words(const quantity::Amount& amount) {
  if (const auto* volume = std::get_if<Interval<Volume>>(&amount.measure))
    return quantity::words(volume->low);
  if (const auto* mass = std::get_if<Interval<Mass>>(&amount.measure)) return quantity::words(mass->low);
  return quantity::kitchen_number(amount.stated.low);
}

}  // namespace

std::variant<LookupWords, InputError> read_query(const LookupQuery& query, const LookupRules& rules) {
  LookupWords asked;
  if (auto error = read_method(query, rules, asked)) return *std::move(error);
  if (!query.jar.empty())
    if (auto error = read_jar(query.jar, rules.tables, asked)) return *std::move(error);
  if (query.pack == "hot" || query.pack == "raw")
    asked.pack = query.pack == "hot" ? recipe::Pack::hot : recipe::Pack::raw;
  else if (!query.pack.empty())
    return InputError{"", {}, "'" + query.pack + "' is no pack", "say hot or raw"};
  asked.altitude = query.altitude;
  if (query.kitchen) {
    const auto& kitchen = query.kitchen->get();
    if (!asked.altitude && kitchen.altitude) asked.altitude = kitchen.altitude->value.high;
    limit_to_canners(kitchen, rules, asked);
  }
  // A product's own id or title may hold a jar size: "fish-in-pint-jars".
  if (rules.tables.find(query.words) != nullptr)
    asked.words = query.words;
  else
    sift_words(query.words, rules.tables, asked);
  if (asked.words.empty())
    return InputError{"", {}, "no food is named", "name a food or a product: \"green beans\""};
  return asked;
}

LookupProduct describe(const Product& product) {
  LookupProduct described;
  described.id = product.id;
  described.title = product.title;
  described.acid_class = to_string(product.acid_class);
  described.source = product.source;
  described.read = product.read;
  described.preparation = product.assumed;
  described.preparation.insert(described.preparation.end(), product.required.begin(), product.required.end());
  for (const auto& [jars, amount] : product.canner_load)
    described.canner_load.emplace_back(amount).append(" for ").append(jars);
  described.covering = product.covering;
  if (product.formula) {
    described.yields = product.formula->yields;
    for (const auto& line : product.formula->lines) described.formula.push_back(line.text);
  }
  described.notes = product.notes;
  return described;
}

void set_headspace(const Product& product, std::string_view pack, JarIndex jar, LookupAnswer& answer) {
  std::optional<Interval<Headspace>> all;
  for (const auto& rule : product.headspace) {
    if (!holds(rule, pack, jar)) continue;
    all = all ? hull(*all, rule.inches) : rule.inches;
    if (!answer.headspace.empty()) answer.headspace += ", ";
    if (!rule.part.empty()) answer.headspace.append(rule.part).append(" ");
    answer.headspace += quantity::words_of(rule.inches);
  }
  if (all) answer.headspace_in = {in_inches(all->low), in_inches(all->high)};
}

std::vector<std::string> acid_words(const Product& product, const Tables& tables,
                                    const foods::Catalogue& catalogue, JarIndex jar) {
  const AcidPerJar* chosen = nullptr;
  const auto counted = tables.jars()[static_cast<std::size_t>(jar)].counts_as.value_or(jar);
  for (const auto& acid : product.acid_per_jar) {
    if (acid.jar == jar) chosen = &acid;
    if (chosen != nullptr && chosen->jar == jar) continue;
    if (acid.jar >= counted && (chosen == nullptr || acid.jar < chosen->jar)) chosen = &acid;
  }
  std::vector<std::string> words;
  if (chosen == nullptr) return words;
  for (const auto& choice : chosen->one_of) {
    const auto* food = catalogue.find(choice.food);
    // "Vinegar, kind not stated": any kind will do.
    const auto name = food != nullptr ? food->name.substr(0, food->name.find(',')) : choice.food;
    auto text = amount_words(choice.amount) + " " + lower_first(name);
    if (choice.strength_percent) text += " (" + quantity::kitchen_number(*choice.strength_percent) + " %)";
    words.push_back(std::move(text));
  }
  return words;
}

std::string band_words(const Band& band) {
  if (std::isinf(band.to.si()) && band.from > Altitude{})
    return "above " + quantity::words(band.from - feet(1));
  return "at " + quantity::words(Interval<Altitude>{band.from, band.to});
}

std::string gauge_name(TableMethod method) {
  static constexpr std::array names{"boiling-water canner", "dial gauge", "weighted gauge"};
  return names[static_cast<std::size_t>(method)];
}

}  // namespace sealworthy::tested
