#pragma once

/// check: kitchen-fit
/// Whether the canners and the stove of the kitchen file can do what the card asks for. Findings point into
/// the kitchen file. A kitchen that lists no canner tells nothing.
///
/// with:
///   case: none          no canner does the card's process: kind, gauge, weight or largest pressure
///   case: other         the same, and the table has another process that the kitchen can do
///   case: jar           every canner of the kind names smaller jars only
///   case: shallow       the boiling-water canner is not deep enough for the jar
///   case: no-rack       the canner of the kind has no rack
///   case: burner        the boiling-water canner is too wide for the burner
///   case: stove         the stove is of a kind that asks for care
///   heights: {quart: 7 inches}   of shallow: how high a jar stands, by id of rules/jars.yaml
///   add: 1 1/2 inches            of shallow: rack, and water over the lids
///   over: 4 inches               of burner: so much wider is still fit
///   stoves: [electric]           of burner and stove: words of the stove's kind
/// {needed} what the card or the rule asks for, {found} what the kitchen has, {other} the processes that the
/// kitchen can do.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_kitchen_fit(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
