#include "suggest/card_writer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "quantity/figures.hpp"

namespace sealworthy::suggest {
namespace {

std::string in_quotes(std::string_view text) {
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

/// "6 lb", "2 (12 oz) cans", as the amount was printed, times `scale`.
std::string amount_words(const quantity::Amount& amount, double scale = 1) {
  if (!amount.stated_any()) return {};
  const auto stated = amount.stated * scale;
  std::string words = quantity::kitchen_number(stated.low);
  if (!stated.exact()) words += " to " + quantity::kitchen_number(stated.high);
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
    std::string name = food + std::string(ending);
    if (form.find(word) != std::string::npos && catalogue_.named(name) != nullptr) return name;
  }
  return {};
}

std::string CardWriter::food_name(const std::string& id) const {
  const auto* food = catalogue_.find(id);
  if (food == nullptr) return id;
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

std::string CardWriter::formula_line(const tested::FormulaLine& line, double scale) const {
  if (food_name(line.foods.front()).empty() && !line.per_jar) return in_quotes(line.text);
  std::string amount;
  for (const auto& alternative : line.amounts) {
    if (amount.empty()) amount = amount_words(alternative, line.per_jar ? 1 : scale);
  }
  std::string states;
  for (const auto& state : line.states) states += (states.empty() ? "" : ", ") + in_quotes(state);
  if (line.not_eaten) states += states.empty() ? "for soaking" : ", for soaking";
  std::string name = food_name(line.foods.front());
  if (line.strength_percent) name += fmt::format(" ({}%)", quantity::kitchen_number(*line.strength_percent));
  const std::string food =
      fmt::format("food: {}{}{}", in_quotes(name), amount.empty() ? "" : ", amount: " + in_quotes(amount),
                  states.empty() ? "" : ", state: [" + states + "]");
  if (!line.per_jar) return "{" + food + "}";
  const std::string jar = line.per_jar_of ? jar_name(*line.per_jar_of) : "jar";
  return fmt::format("{{\"each {}\": {}}}", jar, in_quotes(amount + " " + name));
}

void CardWriter::add_plain_foods(const tested::Product& product, const CardFigures& figures,
                                 std::vector<CardLine>& lines) const {
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
      lines.push_back({in_quotes("6 quarts " + made), {food}, nullptr, false});
      continue;
    }
    lines.push_back({in_quotes("10 lb " + name + (form.empty() ? "" : ", " + form)), {food}, nullptr, false});
  }
}

std::vector<CardLine> CardWriter::ingredients(const tested::Product& product, const CardFigures& figures,
                                              const CardStyle& style) const {
  std::vector<CardLine> lines;
  if (product.formula) {
    for (const auto& line : product.formula->lines) {
      if (!style.acid && is_acid(line)) continue;
      lines.push_back({formula_line(line, style.scale), line.foods, &line, line.per_jar});
    }
  } else {
    add_plain_foods(product, figures, lines);
    if (covering_of(product, figures.pack).find("water") != std::string::npos)
      lines.push_back({"water", {"water"}, nullptr, false});
  }
  if (!style.acid || product.acid_per_jar.empty()) return lines;
  const std::vector<tested::JarIndex> one{figures.jar};
  for (const auto jar : style.jars.empty() ? one : style.jars)
    lines.push_back(
        acid_line(product, jar, style.acid_choice, style.jars.size() < 2 ? "jar" : jar_name(jar)));
  return lines;
}

CardLine CardWriter::acid_line(const tested::Product& product, tested::JarIndex jar, std::size_t choice_index,
                               const std::string& each) const {
  const tested::AcidPerJar* dose = nullptr;
  for (const auto& acid : product.acid_per_jar) {
    if (acid.jar >= jar && (dose == nullptr || acid.jar < dose->jar)) dose = &acid;
  }
  if (dose == nullptr) dose = &product.acid_per_jar.front();
  const auto& choice = dose->one_of[std::min(choice_index, dose->one_of.size() - 1)];
  std::string text = amount_words(choice.amount) + " " + food_name(choice.food);
  if (choice.strength_percent)
    text += fmt::format(" ({}%)", quantity::kitchen_number(*choice.strength_percent));
  return {"each " + each + ": " + in_quotes(text), {choice.food}, nullptr, true};
}

std::string CardWriter::headspace(const tested::Product& product, const CardFigures& figures) const {
  for (const auto& rule : product.headspace) {
    if (rule.pack && *rule.pack != figures.pack) continue;
    if (rule.jar && *rule.jar != figures.jar) continue;
    return quantity::words(rule.inches.low);
  }
  return {};
}

std::vector<std::string> CardWriter::steps(const tested::Product& product, const CardFigures& figures) const {
  std::vector<std::string> steps;
  if (product.sterile_jars_under_10_minutes)
    steps.push_back(fmt::format("Boil the empty jars {} minutes.", boil_jars_minutes(figures.feet)));
  const std::string_view other = figures.pack == recipe::Pack::hot ? "raw pack: " : "hot pack: ";
  for (const auto& step : product.required)
    if (!step.starts_with(other)) steps.push_back(step + ".");
  const std::string covering = covering_of(product, figures.pack);
  if (!product.formula && !covering.empty() && covering != "none")
    steps.push_back(std::string("Fill the jars ") +
                    (figures.pack == recipe::Pack::hot ? "with the hot food " : "") + "and cover with " +
                    covering + ".");
  steps.emplace_back("Close the jars.");
  return steps;
}

std::string CardWriter::write(const tested::Product& product, const CardFigures& figures,
                              const CardStyle& style) const {
  std::string card = "recipe: " + in_quotes(product.title) + "\n";
  if (style.follows) card += "follows: " + product.id + "\n";
  card += "ingredients:\n";
  for (const auto& line : ingredients(product, figures, style)) card += "  - " + line.yaml + "\n";
  card += fmt::format("pack: {}\njars: {}\n", figures.pack == recipe::Pack::hot ? "hot" : "raw",
                      jar_name(figures.jar));
  if (const std::string inches = headspace(product, figures); !inches.empty())
    card += "headspace: " + in_quotes(inches) + "\n";
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
  for (const auto& step : steps(product, figures)) card += "  - " + in_quotes(step) + "\n";
  return card;
}

}  // namespace sealworthy::suggest
