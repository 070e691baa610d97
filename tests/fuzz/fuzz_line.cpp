// Any bytes as an ingredient line: read_line in each kind of kitchen, the first bytes as the parts of the
// spelled-out form, and named. What is read must hold together.

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "knowledge/embedded.hpp"

namespace {

using namespace sealworthy;

void require(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "not so: %s\n", what);
  std::abort();
}

const foods::Catalogue& catalogue() {
  static const foods::Catalogue loaded = [] {
    foods::Catalogue made;
    std::vector<foods::LoadError> errors;
    const auto documents = yaml::unpack(embedded_rules());
    for (const auto& [file, document] : *documents)
      if (file.starts_with("rules/foods/")) made.load(file, document, errors);
    made.finish(errors);
    require(errors.empty(), "the rules load");
    return made;
  }();
  return loaded;
}

void require_whole(const foods::LineReading& reading, std::size_t bytes) {
  require(reading.foods.size() <= bytes, "no more foods than bytes");
  for (const auto& named : reading.foods) {
    require(named.food != nullptr || !named.name.empty(), "a food or its name");
    require(named.food != nullptr || !reading.unknown.empty(), "a food not known is told");
    require(!named.slip || named.food != nullptr, "a slip is of a food");
  }
  require(!reading.all_of || reading.foods.size() != 1, "all of one food is that food");
  if (reading.weight) require(!(reading.weight->high < reading.weight->low), "a weight is an interval");
  if (reading.piece) require(!(reading.piece->high < reading.piece->low), "a piece is an interval");
  if (reading.strength_percent) require(*reading.strength_percent >= 0, "a strength is not negative");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view line(reinterpret_cast<const char*>(data), size);
  for (const auto units : {quantity::Units::us, quantity::Units::metric, quantity::Units::imperial})
    require_whole(catalogue().read_line(line, units), size);
  const auto third = size / 3;
  const std::vector<std::string_view> states{line.substr(2 * third)};
  require_whole(
      catalogue().read_parts(line.substr(0, third), line.substr(third, third), states, quantity::Units::us),
      size);
  const auto* food = catalogue().named(line);
  require(food == nullptr || catalogue().find(food->id) == food, "a food named is one of the catalogue");
  return 0;
}
