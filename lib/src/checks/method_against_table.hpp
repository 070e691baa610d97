#pragma once

/// check: method-against-table
/// The method is one that the matched product's own tables list; nothing is converted from one to another.
/// Records the point `method`. What no food may be processed by, and low-acid food in boiling water, are told
/// by method-not-accepted and method-against-acid-class.
///
/// with:
///   case: not-tabled        the product's tables have other methods only
///         low-temperature   low-temperature treatment of a product that does not list it
///         by-thermometer    low-temperature treatment where it is listed: the temperature can't be read here
///         no-table          the product has no process for the shelf at all
///         unsaid            a process without a method
///         unknown           words that name no method
/// figures: {found} {needed} {product}

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_method_against_table(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
