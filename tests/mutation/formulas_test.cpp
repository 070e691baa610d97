/// Every tested formula as published, in other amounts, measures and order: tested. Then every line of it
/// with every operator: left out, times 0.5 to 2, another food, another state or strength; and risky foods
/// added. What must come of it is worked out by oracle.cpp. Sources: the formulas and the lists of changes
/// under rules/, each with its publication.

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <array>
#include <map>
#include <regex>
#include <sealworthy/checker.hpp>
#include <set>
#include <string>

#include "card_writer.hpp"
#include "knowledge/knowledge.hpp"
#include "oracle.hpp"

namespace sealworthy::mutation {
namespace {

/// Foods that people stir into tested recipes.
constexpr std::array<std::string_view, 42> risky{
    "corn",          "black beans",  "carrots",        "garlic",  "onions",       "zucchini",
    "mushrooms",     "potatoes",     "pumpkin puree",  "butter",  "olive oil",    "cornstarch",
    "flour",         "rice",         "pasta",          "milk",    "cream",        "cheddar cheese",
    "eggs",          "bacon",        "ground beef",    "sausage", "avocados",     "cucumbers",
    "celery",        "green beans",  "peas",           "okra",    "spinach",      "cabbage",
    "cauliflower",   "broccoli",     "sweet potatoes", "lentils", "chicken",      "shrimp",
    "peanut butter", "coconut milk", "bread",          "leeks",   "bell peppers", "water"};

struct Tally {
  long right = 0, missed = 0, tested_wrongly = 0, false_alarm = 0;
};

class Harness {
 public:
  Harness() : knowledge_(checker_.knowledge()), writer_(knowledge_.tables, knowledge_.catalogue) {}

  void run() {
    for (const auto& product : knowledge_.tables.products())
      if (product.formula && !product.rows.empty() && !product.no_tested_process) one(product);
  }

  std::map<std::string, Tally> tallies;
  long formulas = 0;

 private:
  void one(const tested::Product& product) {
    ++formulas;
    figures_ = lowest(product.rows.front());
    as_published(product);
    for (std::size_t i = 0; i < product.formula->lines.size(); ++i) line(product, i);
    for (const auto food : risky) add(product, food);
    for (std::size_t i = 0; i < product.required.size(); ++i) work(product, i);
  }

  /// Each boil, soak or cure that the formula asks for: with twice its time, with half of it, taken back.
  void work(const tested::Product& product, std::size_t index) {
    static const std::regex verb("(boil|simmer|cook|scald|soak|marinate|cure)\\b.*");
    static const std::regex time("([0-9]+)( to [0-9]+)? (minutes|hours|weeks)");
    const std::string& text = product.required[index];
    std::smatch found;
    if (!std::regex_match(text, verb)) return;
    const std::string own = text.substr(0, text.find(' '));
    const bool once = std::count_if(product.required.begin(), product.required.end(), [&](const auto& other) {
                        return other.find(own) != std::string::npos;
                      }) == 1;
    if (!once) return;
    CardStyle style;
    style.work.resize(index + 1);
    const bool whole = text.find('/') == std::string::npos;
    if (whole && std::regex_search(text, found, time) && std::stoi(found[1]) > 1) {
      const auto minutes = [&](int of_two) {
        return found.prefix().str() + std::to_string(std::stoi(found[1]) * of_two / 2) + " " +
               found[3].str() + found.suffix().str();
      };
      if (text.find(" or ") == std::string::npos) {
        style.work[index] = minutes(1);
        judge(product, "half the time of work", style, Expected::forbidden);
      }
      style.work[index] = minutes(4);
      judge(product, "twice the time of work", style, Expected::allowed);
    }
    style.work[index] = "No need to " + own + " it";
    judge(product, "work taken back", style, Expected::forbidden);
  }

  static CardFigures lowest(const tested::Row& row) {
    const auto& step = row.options.front().steps.front();
    CardFigures figures{row.method,
                        row.hot || !row.raw ? recipe::Pack::hot : recipe::Pack::raw,
                        row.jar,
                        step.time.si() / 60,
                        {},
                        500,
                        row.applies_to};
    if (step.pressure) figures.psi = in_psi(*step.pressure);
    return figures;
  }

  [[nodiscard]] static bool rests_on_memory(const tested::Product& product) {
    const auto& steps = product.rows.front().options.front().steps;
    return product.formula->read == Read::memory || steps.front().read == Read::memory ||
           (!product.acid_per_jar.empty() && product.read == Read::memory);
  }

  void as_published(const tested::Product& product) {
    const auto expect = [&](const std::string& name, const CardStyle& style) {
      judge(product, "published " + name, style, Expected::allowed);
    };
    for (const double batch : {0.5, 1.0, 2.0, 3.7})
      if (batch == 1 || scalable(product)) expect(fmt::format("x{}", batch), {.batch = batch});
    expect("metric", {.form = LineForm::metric});
    if (scalable(product)) expect("metric x3.7", {.batch = 3.7, .form = LineForm::metric});
    expect("prose", {.form = LineForm::prose});
    expect("reversed", {.reversed = true});
    for (const std::size_t name : {1U, 2U, 3U}) expect(fmt::format("name {}", name), {.synonym = name});
  }

  /// False where a line is printed as words alone ("peel of 1 orange"), which no factor can be put into.
  static bool scalable(const tested::Product& product) {
    return std::none_of(product.formula->lines.begin(), product.formula->lines.end(),
                        [](const auto& line) { return line.what == line.text && !line.amounts.empty(); });
  }

  void line(const tested::Product& product, std::size_t index) {
    const auto& line = product.formula->lines[index];
    CardStyle style;
    style.edits.resize(index + 1);
    auto& edit = style.edits[index];
    for (const double factor : {0.0, 0.5, 0.67, 0.9, 1.1, 1.5, 2.0}) {
      if (factor != 0 && line.amounts.empty()) continue;
      edit = LineEdit{.factor = factor};
      const auto expected = alone(product, index)
                                ? Expected::anything
                                : amount_changed(product, line, factor, knowledge_.catalogue);
      judge(product, factor == 0 ? "left out" : fmt::format("x{}", factor), style, expected);
    }
    swaps(product, style, index);
    states(product, style, index);
  }

  /// True if no other line fixes the size of the batch.
  static bool alone(const tested::Product& product, std::size_t index) {
    const auto& lines = product.formula->lines;
    for (std::size_t i = 0; i < lines.size(); ++i)
      if (i != index && !lines[i].amounts.empty() && !lines[i].at_most && !lines[i].not_eaten &&
          lines[i].role != "flavor" && !lines[i].per_jar && lines[i].part == lines[index].part)
        return false;
    return true;
  }

  void swaps(const tested::Product& product, CardStyle& style, std::size_t index) {
    const auto& line = product.formula->lines[index];
    if (line.not_eaten || line.optional || line.amounts.empty() || line.per_jar) return;
    std::vector<std::string_view> others;
    if (line.role == "acid")
      others = {"water", "lemon-juice-bottled", "vinegar-white", "vinegar-homemade", "lemon-juice-fresh"};
    if (line.role == "low-acid") others = {"corn", "carrot", "black-bean", "chile-hot"};
    for (const auto other : others) {
      const auto* food = knowledge_.catalogue.find(other);
      if (food == nullptr || std::find(line.foods.begin(), line.foods.end(), other) != line.foods.end())
        continue;
      if (in_formula(product, *food)) continue;
      style.edits[index] = LineEdit{.food = std::string(other)};
      judge(product, fmt::format("{} swapped", line.role), style,
            swapped(product, line, *food, knowledge_.catalogue));
    }
    if (line.role == "acid" && line.strength_percent) {
      style.edits[index] = LineEdit{.strength = 4.0};
      judge(product, "vinegar of 4 %", style, Expected::forbidden);
    }
  }

  bool in_formula(const tested::Product& product, const foods::Food& food) const {
    for (const auto& line : product.formula->lines)
      for (const auto& id : line.foods)
        if (id == food.id || food.parent == id || knowledge_.catalogue.is_a(food, id)) return true;
    return !product.identity.any_of.empty();
  }

  void states(const tested::Product& product, CardStyle& style, std::size_t index) {
    const auto& line = product.formula->lines[index];
    const std::set<std::string> said(line.states.begin(), line.states.end());
    if (line.not_eaten || line.role == "flavor" || line.foods.size() > 1 || line.per_jar) return;
    const auto swap = [&](std::string_view from, std::string_view to) {
      if (said.count(std::string(from)) == 0) return;
      style.edits[index] = LineEdit{.state = std::string(to)};
      judge(product, fmt::format("{} for {}", to, from), style, Expected::forbidden);
    };
    swap("chopped", "pureed");
    swap("diced", "pureed");
    swap("sliced", "pureed");
    swap("chopped", "whole");
    swap("sliced", "whole");
    swap("peeled", "unpeeled");
    swap("blanched", "raw");
  }

  void add(const tested::Product& product, std::string_view food) {
    const auto* known = knowledge_.catalogue.read_line(fmt::format("2 cups {}", food), quantity::Units::us)
                            .foods.front()
                            .food;
    REQUIRE(known != nullptr);
    CardStyle style;
    style.added = {food == "eggs"    ? "4 eggs"
                   : food == "bread" ? "4 slices bread"
                                     : fmt::format("2 cups {}", food)};
    auto expected = added(product, *known, knowledge_.catalogue);
    if (food == "water") {
      const bool acid = std::any_of(product.formula->lines.begin(), product.formula->lines.end(),
                                    [](const auto& line) { return line.role == "acid" && !line.not_eaten; });
      expected = acid ? Expected::forbidden : Expected::anything;
    }
    judge(product, food == "water" ? "water added" : "risky food added", style, expected);
  }

  void judge(const tested::Product& product, const std::string& kind, const CardStyle& style,
             Expected expected) {
    if (expected == Expected::anything) return;
    const auto card = writer_.write(product, figures_, style);
    const auto report = checker_.check_text("card.yaml", card).front();
    auto& tally = tallies[kind];
    const bool is_tested = report.verdict == Verdict::tested;
    const auto above = std::find_if(report.findings.begin(), report.findings.end(),
                                    [](const Finding& f) { return f.severity > Severity::notice; });
    const bool alarm = above != report.findings.end();
    std::string what;
    if (expected == Expected::allowed || expected == Expected::harmless) {
      if (alarm)
        what = "false alarm";
      else if (expected == Expected::allowed && !is_tested && !rests_on_memory(product))
        what = "not tested";
      if (!what.empty()) ++tally.false_alarm;
    } else if (is_tested) {
      ++tally.tested_wrongly;
      what = "called tested";
    } else if (expected == Expected::forbidden && !told(report)) {
      ++tally.missed;
      what = "missed";
    }
    if (what.empty())
      ++tally.right;
    else
      note(what + ", " + kind, product, report, card);
  }

  /// Told at caution or above under a topic that fits what was changed.
  static bool told(const RecipeReport& report) {
    return std::any_of(report.findings.begin(), report.findings.end(), [](const Finding& f) {
      return f.severity > Severity::notice &&
             (f.topic == Topic::acid || f.topic == Topic::change || f.topic == Topic::ingredient ||
              f.topic == Topic::practice || f.topic == Topic::method);
    });
  }

  void note(const std::string& what, const tested::Product& product, const RecipeReport& report,
            const std::string& card) {
    if (++shown_of_[what] > 30) return;
    std::string text = fmt::format("{} ({}): {}\n{}", what, product.id, to_string(report.verdict), card);
    for (const auto& finding : report.findings)
      text += fmt::format("    {} {}: {}\n", to_string(finding.severity), finding.rule, finding.message);
    for (const auto& point : report.points)
      if (point.state == Point::State::unknown || point.state == Point::State::differs)
        text += fmt::format("    point {} {}\n", to_string(point.kind), to_string(point.state));
    MESSAGE(text);
  }

  Checker checker_ = Checker::builtin();
  const knowledge::Knowledge& knowledge_;
  CardWriter writer_;
  CardFigures figures_;
  std::map<std::string, int> shown_of_;
};

TEST_CASE("every formula, every line, every operator") {
  Harness harness;
  harness.run();
  Tally all;
  std::string table = fmt::format("{} formulas\n{:<28}{:>8}{:>8}{:>8}{:>8}\n", harness.formulas, "operator",
                                  "right", "missed", "tested", "alarm");
  for (const auto& [name, tally] : harness.tallies) {
    table += fmt::format("{:<28}{:>8}{:>8}{:>8}{:>8}\n", name, tally.right, tally.missed,
                         tally.tested_wrongly, tally.false_alarm);
    all.right += tally.right;
    all.missed += tally.missed;
    all.tested_wrongly += tally.tested_wrongly;
    all.false_alarm += tally.false_alarm;
  }
  table += fmt::format("{:<28}{:>8}{:>8}{:>8}{:>8}", "all", all.right, all.missed, all.tested_wrongly,
                       all.false_alarm);
  MESSAGE(table);
  CHECK(all.tested_wrongly == 0);
  CHECK(all.false_alarm == 0);
  CHECK(all.missed * 1000 <= (all.right + all.missed) * 5);
}

}  // namespace
}  // namespace sealworthy::mutation
