#pragma once

/// Figures as a cook reads them: "1 1/2", "5,280", "1/4 inch", "25 minutes".

#include <sealworthy/interval.hpp>
#include <sealworthy/quantity.hpp>
#include <string>

namespace sealworthy::quantity {

/// 1.5 -> "1 1/2", 0.333 -> "1/3", 2 -> "2", 0.07 -> "0.07". Nearest eighth or third within 1 percent, else
/// decimal.
std::string kitchen_number(double value);
/// An amount of a US kitchen measure as one can measure it: "1 cup + 3 tbsp" for 1.18 cups, "1 3/4 tsp" for
/// 0.59 tbsp; within `tolerance`, a share of it. Empty where kitchen_number already gives such a figure,
/// where no cups and spoons come that near, and for another unit than cup, tbsp or tsp.
std::string spoon_words(double value, std::string_view unit, double tolerance = 0.01);
/// 5280 -> "5,280"
std::string grouped(double value);
std::string words(Headspace);           ///< "1/2 inch", "1 1/4 inches"
std::string words(Duration);            ///< "25 minutes", "1 minute"
std::string words(GaugePressure);       ///< "11 psi"
std::string words(Altitude);            ///< "5,280 ft"
std::string words(Interval<Altitude>);  ///< "1,001 to 3,000 ft", "above 6,000 ft" when high is infinite
std::string words(
    Volume);  ///< in the kitchen measure that fits: "2 tablespoons", "1/4 teaspoon", "2 1/2 cups", "3 quarts"
std::string words(Mass);  ///< "14 lb", "8 oz"
template <class T>
std::string words_of(const Interval<T>& i) {  ///< "20 minutes" or "20 minutes to 25 minutes"
  return i.exact() ? words(i.low) : words(i.low) + " to " + words(i.high);
}

}  // namespace sealworthy::quantity
