#include "report/cautions.hpp"

#include <fmt/format.h>

#include <array>

#include "report/wrap.hpp"

namespace sealworthy::report {
namespace {

// The signs of a spoiled jar: USDA Complete Guide (2015), Guide 1, Identifying and handling spoiled canned
// food.
constexpr std::array<Caution, 4> all{{
    {"canner", "Follow the instructions of your canner's maker too."},
    {"ask", "The local extension office answers for a food, jar, altitude or device that no table covers."},
    {"selling", "Local law says whether home-canned food may be sold, and how."},
    {"spoiled",
     "Never taste from a jar that leaks, bulges, spurts, foams, is moldy or cloudy, smells off or has lost "
     "its seal. Botulism gives no sign."},
}};

}  // namespace

std::string_view what_it_is() {
  return "This tool compares cards with published processes. It can't see your jars, and it vouches for "
         "nothing else.";
}

std::span<const Caution> cautions() { return all; }

std::string cautions_text(int width) {
  std::string out = wrap("", what_it_is(), 0, width);
  for (const Caution& caution : all)
    out += wrap(fmt::format("  {:<9}", caution.about), caution.text, 11, width);
  return out;
}

}  // namespace sealworthy::report
