#pragma once

/// check: pressure-against-table
/// Pressure against the row for the canner's gauge and the altitude, and the limit of home canners. Where the
/// gauge is not said the pressure is judged for both kinds. More pressure than asked is no fault of its own;
/// it never shortens the time (time-against-table). Records the points `gauge` and `pressure`.
///
/// with:
///   case: dial-short         less than a dial gauge needs, also in the lowest band
///         dial-altitude      enough on a dial gauge in the lowest band, too little where the jars are
///         processed weighted-short, weighted-altitude   the same of a weighted gauge either-short       the
///         gauge is not said and the pressure is too little for both either-altitude    the same, enough in
///         the lowest band gauge-unsaid       the gauge is not said and the pressure serves only one kind
///         weight             on a weighted gauge, none of `weights: [5 psi, 10 psi, 15 psi]`
///         too-high           over `highest: 15 psi`
///         unsaid             the card names no pressure
///         no-gauge           the card names a pressure and a method that builds none
/// figures: {found} {needed} {jar} {at} {serves} {gauge} {other} {method} {product}

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_pressure_against_table(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
