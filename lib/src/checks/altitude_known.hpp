#pragma once

/// check: altitude-known
/// Where the jars are processed, and whether the table has a row for that altitude. Records the point
/// `altitude`. Figures that are too low for the altitude are told by time- and pressure-against-table.
///
/// with:
///   case: unsaid           no altitude is known; the figures were judged in the lowest band
///         unsaid-unmatched the same where no tested process is compared with
///         above-table      above the highest band of the table, or above where an open band is taken to hold
///         extension-row    the same, and the card follows what an extension body prints there
///         other-body       an open band holds, but another body prints more for this altitude
///         outside-card     the kitchen lies outside the altitudes that the card says it is for
/// figures: {found} {needed} {serves} {above} {body} {source} {product}

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_altitude_known(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
