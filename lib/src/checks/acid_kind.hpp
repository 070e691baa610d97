#pragma once

/// check: acid-kind
/// The kind, origin and strength of the acid that the jar's safety rests on. Acid that only flavors an acid
/// fruit, or that stays out of the jar (a dip against browning, a rinse), is not looked at.
///
/// Acid counts where the matched product asks for it (acid in each jar, an acidified formula, an acid line of
/// its formula), or, without a match, where low-acid or borderline food is not pressure-canned. Where the
/// product lists this very acid, only rules about its strength speak.
///
/// with:
///   foods: [...]          the acids that the rule speaks of (not-foods: less these)
///   weaker-than: 5, at-least: 5, strength: unsaid     what the line says of the strength, in percent
///   units: [us, metric, imperial]             the card's units are among these
///   line: [...]           the line says one of these; not-line: it says none of them
///   unless-listed: yes    silent where the product takes this very acid by name
///   alone: yes            no other acid is in the jar
///   point: unknown | differs    what becomes of the point `acid` (untouched unless said)
///   assume: "..."         no finding: the text is added to what a tested card rests on
/// {found} is the line's words for the food, {strength} the strength said.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_acid_kind(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
