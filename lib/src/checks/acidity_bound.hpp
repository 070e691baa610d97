#pragma once

/// check: acidity-bound
/// The pH that the card's foods and acids come to, worked out (lib/include/sealworthy/acidity.hpp). It raises
/// an alarm; it never clears a card, and records no point. Silent where the card's food is that of a
/// tested process and neither its acid nor its amounts differ, where an acid's amount or strength is not
/// known, where nothing but acid foods is in the jar, and where a warning about the acid stands already. Runs
/// last, because it looks at what the other checks have recorded.
///
/// with:
///   limit: 4.6
///   level: likely      the best estimate or the bound with activity is above
///          possible    only the strict bound is
/// figures: {best} {bound} {strict} {limit} {driver} {unknown} {found} {needed}

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_acidity_bound(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
