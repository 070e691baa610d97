#include <array>
#include <utility>

#include "quantity/amount.hpp"
#include "quantity/figure_errors.hpp"
#include "quantity/how_many.hpp"
#include "quantity/jar.hpp"
#include "quantity/lexicon.hpp"
#include "quantity/scan.hpp"

namespace sealworthy::quantity {
namespace {

constexpr std::string_view advice =
    "write how many of which jar, like \"7 quart jars\", \"about 9 pints\" or \"6 half-pints\"";

std::size_t skip_leads(std::string_view text, std::size_t at) {
  for (;;) {
    const Letters word(text, skip_space(text, at));
    const bool lead = word.is("makes") || word.is("make") || word.is("yields") || word.is("yield");
    if (!lead && meaning(word).role != Role::about) return skip_space(text, at);
    at = char_at(text, word.end(), '.') || char_at(text, word.end(), ':') ? word.end() + 1 : word.end();
  }
}

}  // namespace

Figure<Yield> read_yield(std::string_view text, Units units) {
  const auto refuse = [&](std::string_view what) { return refusal(text, what, std::string(advice)); };
  if (at_end(text, 0)) return FigureError{"no yield is given", std::string(advice)};
  const auto many = how_many(text, skip_leads(text, 0));
  if (!many) return refuse("does not say how many jars");
  Yield yield;
  auto end = many->end;
  if (const auto jar = jar_at(text, end, units, many->size)) {
    yield.jar = jar->text;
    end = jar->end;
  } else {
    JarText unsaid;
    end = skip_jar_words(text, end, unsaid);
  }
  if (const auto rest = skip_space(text, end); rest < text.size())
    return refuse("holds more than a number of jars: " + quoted(text.substr(rest)));
  if (many->number.low > many->number.high) return refuse("goes from the greater figure to the less");
  if (many->number.low <= 0 || many->number.high > 10000)
    return refuse("is out of range: anything above 0 and up to 10,000 jars is accepted");
  if (yield.jar && !sensible_jar(yield.jar->volume))
    return refuse("is out of range for a canning jar: 20 ml to 20 litres is accepted");
  yield.count = {count(many->number.low), count(many->number.high)};
  return yield;
}

}  // namespace sealworthy::quantity
