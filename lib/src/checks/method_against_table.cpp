#include "checks/method_against_table.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "checks/against_table.hpp"
#include "checks/cases.hpp"

namespace sealworthy::checks {
namespace {

using reading::JarProcess;
using reading::MethodKind;
using reading::Reading;
using State = Point::State;

enum class Case { not_tabled, low_temperature, by_thermometer, no_table, unsaid, unknown };
const std::vector<std::string_view> case_names{"not-tabled", "low-temperature", "by-thermometer",
                                               "no-table",   "unsaid",          "unknown"};

/// "a boiling-water canner", "a pressure canner", both, or nothing where no process is tabled.
std::string tabled_methods(const tested::Product& product) {
  const auto has = [&](bool water) {
    return std::any_of(product.rows.begin(), product.rows.end(), [&](const tested::Row& row) {
      return (row.method == tested::TableMethod::boiling_water) == water;
    });
  };
  std::string words;
  if (has(true)) words = "a boiling-water canner";
  if (has(false)) words += words.empty() ? "a pressure canner" : " or a pressure canner";
  return words;
}

class MethodAgainstTable final : public Check {
 public:
  MethodAgainstTable(std::span<const Rule* const> rules, Maker& maker) : cases_(rules, maker, case_names) {}

  void run(const Reading& reading, Results& results) const override {
    for (const JarProcess& jar : reading.jars) {
      const Outcome outcome = judge_method(reading, jar);
      const std::string found(jar.method_name);
      results.point(PointKind::method, outcome.state, found);
      if (!outcome.told) continue;
      const Rule* rule = cases_.find(outcome.which, reading);
      if (rule == nullptr) continue;
      const tested::Product* product = reading.match.product;
      results.add(
          *rule, method_at(reading, jar),
          {{"found", found.empty() && jar.process->method ? std::string(jar.process->method->value) : found},
           {"needed", product == nullptr ? std::string() : tabled_methods(*product)},
           {"product", product == nullptr ? std::string() : product->title}});
    }
  }

 private:
  struct Outcome {
    State state = State::unknown;
    bool told = false;
    Case which = Case::not_tabled;
  };

  static Position method_at(const Reading& reading, const JarProcess& jar) {
    return jar.process != nullptr && jar.process->method ? jar.process->method->at : process_at(reading, jar);
  }

  static Outcome judge_method(const Reading& reading, const JarProcess& jar) {
    if (jar.process == nullptr) return {};
    if (!jar.process->method) return {State::unknown, true, Case::unsaid};
    if (jar.method == MethodKind::unknown) return {State::unknown, true, Case::unknown};
    if (jar.method == MethodKind::not_accepted) return {State::differs};
    const tested::Product* product = reading.match.product;
    if (product == nullptr) return {};
    if (jar.method == MethodKind::low_temperature) {
      if (product->low_temperature_pasteurization) return {State::unknown, true, Case::by_thermometer};
      return {State::differs, true, Case::low_temperature};
    }
    if (has_method_rows(reading, jar)) return {State::held};
    if (product->rows.empty()) return {State::unknown, true, Case::no_table};
    // Low-acid food out of the pressure canner is told by its acid class.
    return {State::differs, product->acid_class != tested::ProductClass::low_acid, Case::not_tabled};
  }

  Cases cases_;
};

}  // namespace

std::unique_ptr<Check> make_method_against_table(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<MethodAgainstTable>(rules, maker);
}

}  // namespace sealworthy::checks
