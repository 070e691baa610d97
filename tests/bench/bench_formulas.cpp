// What finding a card's tested formula costs, and how it grows with the number of formulas: the cards of all
// published formulas, without `follows:`, against the rules that are compiled in and against ten times as
// many formulas. The ten further ones to each are invented: its lines with other foods of the same role.
// An argument says how many further ones there are for each instead of ten.
// Goals: at most 20 microseconds a card for matching and comparing, and less than twice that with ten times
// the formulas.

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <map>
#include <sealworthy/checker.hpp>
#include <string>
#include <variant>

#include "quantity/figures.hpp"
#include "tested/compare.hpp"
#include "unit/reading/identities.hpp"

namespace {

using namespace sealworthy;

/// The same numbers in every run.
class Dice {
 public:
  std::size_t below(std::size_t end) {
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return static_cast<std::size_t>(state_ >> 33U) % end;
  }

 private:
  std::uint64_t state_ = 20261128;
};

bool exchanged(const tested::FormulaLine& line) {
  return line.foods.size() == 1 && (line.role == "low-acid" || line.role == "acid-food" || line.role.empty());
}

std::string invented_formulas(const knowledge::Knowledge& known, int times) {
  std::map<std::string, std::vector<std::string>> pool;
  for (const auto& product : known.tables.products())
    if (product.formula)
      for (const auto& line : product.formula->lines)
        if (exchanged(line)) pool[line.role].push_back(line.foods.front());
  Dice dice;
  std::string out = "publication: invented\nsection: benchmark\nproducts:\n";
  int number = 0;
  for (const auto& product : known.tables.products()) {
    if (!product.formula) continue;
    for (int i = 0; i < times; ++i) {
      std::string lines, main;
      for (const auto& line : product.formula->lines) {
        if (line.foods.empty() || line.amounts.empty()) continue;
        std::string food = line.foods.front();
        if (exchanged(line)) {
          const auto& foods = pool[line.role];
          food = foods[dice.below(foods.size())];
          if (main.empty()) main = food;
        }
        lines += "        - {food: " + food + ", amount: " + std::to_string(1 + dice.below(8)) + " cups" +
                 (line.role.empty() ? "" : ", role: " + line.role) + "}\n";
      }
      if (main.empty()) continue;
      const std::string name = std::to_string(++number);
      out += "  - id: invented-" + name + "\n    title: Invented " + name +
             "\n    page: \"1\"\n    class: acidified\n    foods: [" + main +
             "]\n    styles: [chopped]\n    headspace: 1/2 inch\n    rows:\n      - {method: boiling-water, "
             "packs: [hot], jar: pint, minutes: {0-1000: 15, 1001-6000: 20, 6001+: 25}}\n    formula:\n"
             "      yields: about 6 pints\n      lines:\n" +
             lines;
    }
  }
  return out;
}

struct Run {
  std::size_t formulas = 0;
  double match = 0, both = 0;  ///< microseconds of processor time a card, of the fastest of five runs
};

Run measure(const knowledge::Knowledge& known, const std::vector<std::string>& texts) {
  std::vector<std::unique_ptr<cards::Card>> all;
  for (const auto& text : texts) {
    const auto documents = yaml::read_documents(text);
    auto card = std::make_unique<cards::Card>();
    card->recipe =
        std::move(std::get<recipe::Recipe>(recipe::read_card(std::get<yaml::Document>(documents.front()))));
    card->reading = reading::build(card->recipe, {}, known);
    all.push_back(std::move(card));
  }
  Run run;
  for (const auto& product : known.tables.products()) run.formulas += product.formula ? 1U : 0U;
  std::size_t kept = 0;
  const auto fastest = [&](const auto& work) {
    constexpr int rounds = 20;
    double best = 1e9;
    for (int i = 0; i < 5; ++i) {
      const std::clock_t begin = std::clock();
      for (int round = 0; round < rounds; ++round)
        for (const auto& card : all) work(card->reading);
      best = std::min(best, static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC * 1e6 /
                                static_cast<double>(all.size() * rounds));
    }
    return best;
  };
  run.match = fastest([&](const reading::Reading& r) { kept += reading::match(r).product != nullptr; });
  run.both = fastest([&](const reading::Reading& r) {
    const auto match = reading::match(r);
    if (match.product != nullptr && match.product->formula && match.compared == nullptr)
      kept += tested::compare(*match.product, r).differences();
  });
  std::printf("%5zu formulas, %zu cards: match %6.2f us, match and compare %6.2f us a card (%zu)\n",
              run.formulas, all.size(), run.match, run.both, kept);
  return run;
}

}  // namespace

int main(int argc, char** argv) {
  const int further = argc > 1 ? std::atoi(argv[1]) : 10;
  const auto& known = cards::known();
  std::vector<std::string> texts;
  for (const auto& product : known.tables.products()) {
    if (!product.formula) continue;
    std::string text = "recipe: \"A mixture\"\ningredients:\n";
    for (const auto& line : cards::lines_of(*product.formula)) {
      std::string quoted;
      for (const char c : line) quoted += c == '"' || c == '\\' ? std::string("\\") + c : std::string(1, c);
      text += "  - \"" + quoted + "\"\n";
    }
    texts.push_back(text);
  }
  const std::string sources =
      "sources:\n  invented: {name: Invented formulas, title: Invented formulas, publisher: nobody, year: "
      "2026}\n";
  const auto invented = invented_formulas(known, further);
  const auto more = Checker::with_rules({{"sources.yaml", sources}, {"invented.yaml", invented}});
  if (const auto* errors = std::get_if<std::vector<InputError>>(&more)) {
    for (const auto& error : *errors) std::fprintf(stderr, "%s\n", error.message.c_str());
    return 2;
  }
  const Run once = measure(known, texts);
  const Run ten = measure(std::get<Checker>(more).knowledge(), texts);
  std::printf("%.1f times the formulas: %.2f times the time\n",
              static_cast<double>(ten.formulas) / static_cast<double>(once.formulas), ten.both / once.both);
  return once.both <= 20 && ten.both < 2 * once.both ? 0 : 1;
}
