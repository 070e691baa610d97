#pragma once

/// At which altitudes a card's figures are judged.

#include "reading/build.hpp"
#include "reading/reading.hpp"

namespace sealworthy::reading {

/// Fills Reading::altitude and the heights of each jar's process: the worse end of where the kitchen is and
/// the worse end of what the card's process says it is for, and where the recipe's writer cans it. Of several
/// processes that serve one jar by one method and say different altitudes, only the one meant for the
/// kitchen's is judged there. After read_jars.
void read_altitude(Reading& reading, const Settings& settings);

}  // namespace sealworthy::reading
