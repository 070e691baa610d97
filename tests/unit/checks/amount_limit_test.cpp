#include "checks/amount_limit.hpp"

#include <doctest/doctest.h>

using namespace sealworthy;
using checks::AmountLimit;

namespace {

std::optional<AmountLimit> limit(std::string_view text, std::vector<foods::LoadError>& errors) {
  static std::vector<std::vector<yaml::DocumentOrError>> kept;
  kept.push_back(yaml::read_documents("more-than: " + std::string(text) + "\n"));
  checks::Fields with(std::get<yaml::Document>(kept.back().at(0)).root(), "with", {"x.yaml", errors});
  return AmountLimit::read(with, "more-than");
}

foods::LineReading line(std::string_view amount) {
  foods::LineReading read;
  if (const auto found = quantity::read_amount(amount, quantity::Units::us)) read.amount = *found;
  return read;
}

}  // namespace

TEST_CASE("a line is within a volume limit by its upper end") {
  std::vector<foods::LoadError> errors;
  const auto quarter_cup = limit("1/4 cup", errors);
  REQUIRE(quarter_cup);
  CHECK(quarter_cup->surely_within(line("2 tablespoons")));
  CHECK(quarter_cup->surely_within(line("1/4 cup")));
  CHECK(quarter_cup->surely_within(line("60 ml")));
  CHECK_FALSE(quarter_cup->surely_within(line("1/3 cup")));
  CHECK_FALSE(quarter_cup->surely_within(line("2-6 tablespoons")));
  CHECK(quarter_cup->surely_within(line("a pinch")));
  CHECK_FALSE(quarter_cup->surely_within(line("some")));
  CHECK_FALSE(quarter_cup->surely_within(line("2")));
}

TEST_CASE("a weighed line is within a volume limit only if its weight surely is") {
  std::vector<foods::LoadError> errors;
  const auto half_cup = limit("1/2 cup", errors);
  auto butter = line("2 oz");
  CHECK_FALSE(half_cup->surely_within(butter));  // weight not worked out
  butter.weight = Interval<Mass>::exactly(grams(57));
  CHECK(half_cup->surely_within(butter));
  butter.weight = Interval<Mass>::exactly(grams(200));
  CHECK_FALSE(half_cup->surely_within(butter));
}

TEST_CASE("a limit that is no weight or volume is an error of the rules") {
  std::vector<foods::LoadError> errors;
  CHECK_FALSE(limit("2 pieces", errors));
  CHECK_FALSE(limit("some", errors));
  CHECK(errors.size() == 2);
}
