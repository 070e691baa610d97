#include "card_writer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "quantity/figures.hpp"

namespace sealworthy::mutation {
namespace {

std::string quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + '"';
}

std::string lower(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

/// Plain decimals where a factor gives an odd figure, as nobody measures 11/30 of a cup.
std::string figure(double value, double factor) {
  if (factor == 1) return quantity::kitchen_number(value);
  return fmt::format("{:.5g}", value * factor);
}

/// "1.5 l", "454 g": litres of volumes, grams of weights; empty for counts.
std::string metric_words(const quantity::Amount& amount, double factor) {
  const auto range = [&](double low, double high, std::string_view unit) {
    const auto high_words = fmt::format("{:.5g}", high * factor);
    return (low == high ? std::string() : fmt::format("{:.5g} to ", low * factor)) + high_words +
           std::string(unit);
  };
  if (const auto* mass = std::get_if<Interval<Mass>>(&amount.measure))
    return range(mass->low.si() * 1000, mass->high.si() * 1000, " g");
  if (const auto* volume = std::get_if<Interval<Volume>>(&amount.measure))
    return range(volume->low.si() * 1e6, volume->high.si() * 1e6, " ml");
  return {};
}

/// "6 lb", "2 (12 oz) cans", as the amount was printed, times a factor.
std::string amount_words(const quantity::Amount& amount, double factor = 1) {
  if (!amount.stated_any()) return {};
  std::string words = figure(amount.stated.low, factor);
  if (!amount.stated.exact()) words += " to " + figure(amount.stated.high, factor);
  const bool package = amount.size.find(' ') != std::string::npos;
  if (package) words += " (" + amount.size + ")";
  if (!amount.size.empty() && !package) words += " " + amount.size;
  if (!amount.unit.empty()) words += " " + amount.unit;
  if (amount.about) words = "about " + words;
  return words;
}

bool is_acid(const tested::FormulaLine& line) { return line.role == "acid"; }

/// What the product covers its food with in this pack: "hot pack: hot broth; raw pack: none" or one for both.
std::string covering_of(const tested::Product& product, recipe::Pack pack) {
  const std::string label = pack == recipe::Pack::hot ? "hot pack: " : "raw pack: ";
  const auto at = product.covering.find(label);
  if (at != std::string::npos) {
    const std::string rest = product.covering.substr(at + label.size());
    return rest.substr(0, rest.find(';'));
  }
  const bool by_pack = product.covering.find(" pack: ") != std::string::npos;
  return by_pack ? std::string() : product.covering;
}

/// A dish is told by the title alone: "10 lb carrots, soup" is no line of a soup.
bool is_dish(const std::string& form) { return form == "soup" || form == "stock"; }

/// Boiling empty jars: 10 minutes up to 1,000 ft, one more for each further 1,000 ft (USDA Complete Guide
/// (2015), Guide 1, Sterilization of empty jars).
int boil_jars_minutes(double feet) {
  return 10 + std::max(0, static_cast<int>(std::ceil((feet - 1000) / 1000)));
}

bool seafood(const std::string& part) { return part.find("with any seafood") != std::string::npos; }

}  // namespace

/// Juice, sauce and broth are foods of their own: "6 quarts apple juice".
std::string CardWriter::made_from(const std::string& food, const std::string& form) const {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 3> made{
      {{"juice", " juice"}, {"sauce", "sauce"}, {"broth", " broth"}}};
  for (const auto& [word, ending] : made) {
    const std::string name = food + std::string(ending);
    if (form.find(word) != std::string::npos && catalogue_.named(name) != nullptr) return name;
  }
  return {};
}

std::string CardWriter::food_name(const std::string& id, std::size_t synonym) const {
  const auto* food = catalogue_.find(id);
  if (food == nullptr) return id;
  if (const auto names = names_.find(id);
      synonym > 0 && names != names_.end() && names->second.size() >= synonym)
    if (catalogue_.named(names->second[synonym - 1]) == food) return names->second[synonym - 1];
  // The catalogue's own name may hold two words for one food, or a comma.
  const std::string name = lower(food->name);
  for (const std::string& part : {name, name.substr(0, name.find(" or ")), name.substr(0, name.find(','))}) {
    if (catalogue_.named(part) == food) return part;
  }
  return {};
}

std::string CardWriter::jar_name(tested::JarIndex jar) const {
  const auto& size = tables_.jars()[static_cast<std::size_t>(jar)];
  return quantity::kitchen_number(in_us_fluid_ounces(size.volume)) == "16" ? "pint" : size.name;
}

std::string CardWriter::formula_line(const tested::FormulaLine& line, const LineEdit& edit,
                                     const CardStyle& style) const {
  if (!edit.instead.empty()) return quoted(edit.instead);
  const double factor = edit.factor * (line.per_jar ? 1 : style.batch);
  auto id = edit.food.empty() ? line.foods.front() : edit.food;
  for (const auto& other : line.foods)
    if (edit.food.empty() && food_name(id).empty()) id = other;
  if (food_name(id).empty() && !line.per_jar && factor == 1 && edit.state.empty()) return quoted(line.text);
  std::string amount;
  for (const auto& alternative : line.amounts) {
    if (!amount.empty()) break;
    if (style.form == LineForm::metric && !alternative.about) amount = metric_words(alternative, factor);
    if (amount.empty()) amount = amount_words(alternative, factor);
  }
  std::vector<std::string> states = line.states;
  if (!edit.state.empty()) states = {edit.state};
  if (line.not_eaten) states.emplace_back("for soaking");
  std::string name = food_name(id, style.synonym);
  if (style.synonym >
      0) {  // "25 pepper" are pods, not corns: the count tells which of its namesakes is meant
    const auto read = catalogue_.read_line(amount + " " + name, quantity::Units::us);
    if (read.foods.empty() || read.foods.front().food != catalogue_.find(id)) name = food_name(id);
  }
  if (name.empty())
    name = edit.food.empty() ? line.what.substr(0, line.what.find(',')) : lower(catalogue_.find(id)->name);
  if (const auto strength = edit.strength       ? edit.strength
                            : edit.food.empty() ? line.strength_percent
                                                : std::nullopt)
    name += fmt::format(" ({}%)", quantity::kitchen_number(*strength));
  if (style.form == LineForm::prose && !line.per_jar) {
    std::string text = amount.empty() ? name : amount + " " + name;
    for (const auto& state : states) text += ", " + state;
    return quoted(text);
  }
  std::string listed;
  for (const auto& state : states) listed += (listed.empty() ? "" : ", ") + quoted(state);
  const std::string food =
      fmt::format("food: {}{}{}", quoted(name), amount.empty() ? "" : ", amount: " + quoted(amount),
                  listed.empty() ? "" : ", state: [" + listed + "]");
  if (!line.per_jar) return "{" + food + "}";
  const std::string jar = line.per_jar_of ? jar_name(*line.per_jar_of) : "jar";
  return fmt::format("{{\"each {}\": {}}}", jar, quoted(amount + " " + name));
}

void CardWriter::add_plain_foods(const tested::Product& product, const CardFigures& figures,
                                 std::vector<std::string>& lines) const {
  std::vector<std::string> foods = product.identity.all_of;
  int others = 0;
  for (const auto& food : product.identity.any_of) {
    if (others == product.identity.at_least) break;
    if (catalogue_.find(food) == nullptr) continue;
    foods.push_back(food);
    ++others;
  }
  if (foods.empty()) foods.push_back(product.foods.front());
  if (seafood(figures.part)) foods.push_back("clam");
  std::string form;
  if (!product.identity.form_any.empty()) {
    form = product.identity.form_any.front();
  } else if (!product.styles.empty()) {
    form = product.styles.front();
  }
  if (is_dish(form)) form.clear();
  const auto is_named = [&](const auto& food) {
    return std::find(foods.begin(), foods.end(), food) != foods.end();
  };
  if (!is_named(product.foods.front()) && product.identity.any_of.empty())
    foods.push_back(product.foods.front());
  for (const auto& food : foods) {
    const std::string own = food_name(food);
    const std::string name = own.empty() ? lower(catalogue_.find(food)->name) : own;
    const std::string made = made_from(name, form);
    if (!made.empty()) {
      lines.push_back(quoted("6 quarts " + made));
      continue;
    }
    lines.push_back(quoted("10 lb " + name + (form.empty() ? "" : ", " + form)));
  }
}

std::vector<std::string> CardWriter::ingredients(const tested::Product& product, const CardFigures& figures,
                                                 const CardStyle& style) const {
  std::vector<std::string> lines;
  if (product.formula) {
    for (std::size_t i = 0; i < product.formula->lines.size(); ++i) {
      const auto& line = product.formula->lines[i];
      const LineEdit edit = i < style.edits.size() ? style.edits[i] : LineEdit{};
      if ((!style.acid && is_acid(line)) || edit.factor == 0) continue;
      lines.push_back(formula_line(line, edit, style));
    }
  } else {
    add_plain_foods(product, figures, lines);
    if (covering_of(product, figures.pack).find("water") != std::string::npos) lines.push_back("water");
  }
  if (!style.acid || product.acid_per_jar.empty()) return lines;
  const tested::AcidPerJar* dose = nullptr;
  for (const auto& acid : product.acid_per_jar) {
    if (acid.jar >= figures.jar && (dose == nullptr || acid.jar < dose->jar)) dose = &acid;
  }
  if (dose == nullptr) dose = &product.acid_per_jar.front();
  const auto& choice = dose->one_of[std::min(style.acid_choice, dose->one_of.size() - 1)];
  std::string text = amount_words(choice.amount) + " " + food_name(choice.food);
  if (choice.strength_percent)
    text += fmt::format(" ({}%)", quantity::kitchen_number(*choice.strength_percent));
  lines.push_back("each jar: " + quoted(text));
  return lines;
}

std::string CardWriter::write(const tested::Product& product, const CardFigures& figures,
                              const CardStyle& style) const {
  std::string card = "recipe: " + quoted(product.title) + "\n";
  if (style.follows) card += "follows: " + product.id + "\n";
  card += "ingredients:\n";
  auto lines = ingredients(product, figures, style);
  for (const auto& line : style.added) lines.push_back(quoted(line));
  if (style.reversed) std::reverse(lines.begin(), lines.end());
  for (const auto& line : lines) card += "  - " + line + "\n";
  card += fmt::format("pack: {}\njars: {}\n", figures.pack == recipe::Pack::hot ? "hot" : "raw",
                      jar_name(figures.jar));
  for (const auto& headspace : product.headspace) {
    if (headspace.pack && *headspace.pack != figures.pack) continue;
    if (headspace.jar && *headspace.jar != figures.jar) continue;
    card += "headspace: " + quoted(quantity::words(headspace.inches.low)) + "\n";
    break;
  }
  std::string method = style.method;
  if (method.empty())
    method = figures.method == tested::TableMethod::boiling_water ? "boiling water" : "pressure canner";
  card += "process:\n  method: " + method + "\n";
  if (figures.method != tested::TableMethod::boiling_water)
    card += fmt::format("  gauge: {}\n",
                        figures.method == tested::TableMethod::pressure_dial ? "dial" : "weighted");
  if (figures.psi) card += fmt::format("  pressure: {:.4g} psi\n", *figures.psi);
  card += fmt::format("  time: {} minutes\n  altitude: {} ft\n", figures.minutes, figures.feet);
  card += "steps:\n";
  if (product.sterile_jars_under_10_minutes)
    card += fmt::format("  - Boil the empty jars {} minutes.\n", boil_jars_minutes(figures.feet));
  for (std::size_t i = 0; i < product.required.size(); ++i) {
    const bool other = i < style.work.size() && !style.work[i].empty();
    card += "  - " + quoted((other ? style.work[i] : product.required[i]) + ".") + "\n";
  }
  const std::string covering = covering_of(product, figures.pack);
  if (!product.formula && !covering.empty() && covering != "none")
    card += "  - " + quoted("Fill the jars and cover with " + covering + ".") + "\n";
  card += "  - Close the jars.\n";
  return card;
}

}  // namespace sealworthy::mutation
