#pragma once

/// check: time-against-table
/// Minutes against the row for product, method, pack, jar and altitude. Any published option that is met
/// counts; more time than asked says nothing. Records the point `time`.
///
/// with:
///   case: short            less than asked, also in the lowest band
///         altitude         enough in the lowest band, too little where the jars are processed
///         other-pack       enough for the other pack only
///         higher-pressure  short, at more pressure than asked: pressure does not stand in for time
///         steam-longest    over what a steam canner may run (rules/altitude.yaml), as the card has it or as
///         the
///                          table asks
///         low-temperature  less than `least: 30 minutes` of low-temperature treatment
///         unsaid           the card names no time
///         infant           fruit for a baby: `steps: [{to: 1000 ft, time: 20 minutes}, ..., {time: ...}]`
///         hold
///                          where they are longer than the table
/// figures: {found} {needed} {jar} {at} {pressure} {serves} {product}

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_time_against_table(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
