#pragma once

/// What the jar holds, taken together: low-acid, acid, or made acid.

#include "reading/reading.hpp"

namespace sealworthy::reading {

/// Fills Reading::low_acid_food, acid_added and jar_class. A matched product's class decides; without a
/// match, or with a doubtful one, the foods do where they leave no doubt: all acid, or low-acid with no acid
/// at all. Mixtures stay unknown.
void read_jar_class(Reading& reading);

JarClass jar_class_of(tested::ProductClass product_class);

}  // namespace sealworthy::reading
