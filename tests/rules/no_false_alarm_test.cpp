// Every tested product as it is published, in its printed words: the rules on ingredients, acid, form, liquid
// and lids must find nothing above a notice, with `follows:` and without. Source of the cards: the process
// files themselves, each with its publication.

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <sealworthy/checker.hpp>

#include "checks/phrases.hpp"
#include "knowledge/knowledge.hpp"
#include "quantity/figures.hpp"

using namespace sealworthy;

namespace {

constexpr std::array<std::string_view, 10> checks_held{
    "acid-kind",       "forbidden-food",      "form-against-table",      "lid-kind",      "liquid-required",
    "match-to-tested", "method-not-accepted", "mixture-longest-process", "prep-required", "process-missing"};

const Checker& checker() {
  static const auto made = Checker::builtin();
  return made;
}

std::string quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + "\"";
}

std::string name_of(const std::string& food) {
  const auto* found = checker().knowledge().catalogue.find(food);
  return found == nullptr ? food : found->name;
}

/// Every liquid that the product's covering names, where the card's pack takes it.
void add_covering(const tested::Product& product, std::vector<std::string>& lines) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 5> liquids{
      {{"water", "water"},
       {"broth", "2 quarts beef broth"},
       {"syrup", "2 cups sugar"},
       {"oil", "2 cups olive oil"},
       {"tomato juice", "2 quarts tomato juice"}}};
  const text::Words words(product.covering);
  for (const auto& [word, line] : liquids)
    if (checks::Phrases({std::string(word)}).in(words) != "") lines.emplace_back(line);
}

/// The formula's lines as printed; else the foods that tell the product, in the form that it asks for.
std::vector<std::string> lines_of(const tested::Product& product, const tested::Formula* formula) {
  std::vector<std::string> lines;
  if (formula != nullptr) {
    for (const auto& line : formula->lines)
      lines.push_back((line.per_jar ? "each jar: " : "") + quoted(line.text));
    return lines;
  }
  std::vector<std::string> foods = product.identity.all_of;
  for (const auto& food : product.identity.any_of)
    if (static_cast<int>(foods.size()) < std::max(1, product.identity.at_least) &&
        food.find(':') == food.npos)
      foods.push_back(food);
  if (foods.empty()) foods.push_back(product.foods.front());
  // The title tells the form ("Soups", "Tomato juice"); where it does not, the first line does.
  std::string form;
  if (!product.identity.form_any.empty() && product.id != "soups")
    form = ", " + product.identity.form_any.front();
  for (const auto& food : foods) lines.push_back(quoted("10 lb " + name_of(food) + form));
  add_covering(product, lines);
  if (!product.acid_per_jar.empty()) {
    const auto& choice = product.acid_per_jar.front().one_of.front();
    lines.push_back("each jar: " + quoted(quantity::kitchen_number(choice.amount.stated.low) + " " +
                                          choice.amount.unit + " " + name_of(choice.food)));
  }
  return lines;
}

std::string card(const tested::Product& product, const tested::Formula* formula, bool follows) {
  const auto& row = product.rows.front();
  const auto& step = row.options.front().steps.front();
  const bool pressure = row.method != tested::TableMethod::boiling_water;
  const auto& jar = checker().knowledge().tables.jars()[static_cast<std::size_t>(row.jar)];
  std::string text = "recipe: " + quoted(product.title) + "\n";
  if (follows) text += "follows: " + product.id + "\n";
  text += "ingredients:\n";
  for (const auto& line : lines_of(product, formula)) text += "  - " + line + "\n";
  text +=
      fmt::format("pack: {}\njars: {}\nlids: new\n", row.hot || !row.raw ? "hot" : "raw", quoted(jar.name));
  text += fmt::format("process: {{method: {}, time: {} minutes, altitude: 0-1000 ft{}}}\n",
                      pressure ? "pressure canner" : "boiling water", in_minutes(step.time),
                      step.pressure ? fmt::format(", pressure: {:.4g} psi", in_psi(*step.pressure)) : "");
  text += "steps:\n";
  for (const auto& required : product.required) text += "  - " + quoted(required + ".") + "\n";
  text += "  - Fill the jars and close them.\n";
  return text;
}

/// What the rules of these checks find above a notice.
std::string alarms(const RecipeReport& report) {
  std::string out;
  for (const auto& finding : report.findings) {
    const auto* rule = checker().knowledge().rule(finding.rule);
    const bool ours = rule == nullptr ||
                      std::find(checks_held.begin(), checks_held.end(), rule->check) != checks_held.end();
    if (ours && finding.severity > Severity::notice)
      out += fmt::format("\n      {} {}: {}", to_string(finding.severity), finding.rule, finding.message);
  }
  return out;
}

}  // namespace

TEST_CASE("no tested product as published draws an alarm from the rules on what is in the jar") {
  int cards = 0;
  for (const auto& product : checker().knowledge().tables.products()) {
    if (product.rows.empty() || product.no_tested_process) continue;
    std::vector<const tested::Formula*> formulas{product.formula ? &*product.formula : nullptr};
    for (const auto& version : product.versions) formulas.push_back(&version);
    for (const auto* formula : formulas)
      for (const bool follows : {true, false}) {
        const auto text = card(product, formula, follows);
        const auto report = checker().check_text("published.yaml", text).front();
        // Printed words that name a food otherwise than a cook does may leave a card without `follows:`
        // unmatched.
        if (!follows && report.matched.id.empty()) continue;
        ++cards;
        INFO(text);
        CHECK(alarms(report) == "");
      }
  }
  CHECK(cards > 400);
  MESSAGE(cards << " cards");
}
