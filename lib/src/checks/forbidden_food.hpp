#pragma once

/// check: forbidden-food
/// A food, a form of it or a mix that has no tested process, or that may not be added to the jar. Silent
/// where the product that the card follows lists the food itself, or where the nearest one's formula does and
/// the card keeps to that formula.
///
/// with: the keys of one case, or `cases:` with a list of them; all that a case says must hold.
///   foods: [egg, kind:dairy, tag:thickening]  one of these is in the jar; the finding points at its line
///   not-foods: [...]        less these (so too not-beside ...)
///   beside: [...]           one of these is in the jar as well, in another line
///   only: [...]             nothing else is but these, the foods themselves and neutral ones (salt, sugar,
///   water,
///                           dry spice)
///   without: [...]          none of these is in the jar
///   form: [pureed, ...]     the food's own line or the title says one of these
///   states: [canned, ...]   the food's own line says one of these, as a state of rules/foods/states.yaml
///   not-form: [...]         neither says one of these
///   told: [...]             a step says one of these and no other food of the card: the food's form, as
///   `form`
///                           is; with `form` one of the two is enough
///   not-told: [...]         but such a sentence does not say one of these
///   line: [...]             the words of the food's own line, where no state is made of them
///   title: [...]            the title says one of these
///   not-title: [...]        it says none of these
///   more-than: 1/2 tsp      the line's amount is over this, or not known, or goes into each jar
///   up-to: 1/4 cup          the line's amount is known, goes into the batch and is no more than this
///   measured: weight | volume | count    how the line's amount is given
///   acid: none | added      vinegar, bottled juice or citric acid is in the jar in a plausible share, or not
/// beside the case or cases:
///   silent-if: listed (default)   the product that the card follows lists the food
///              near                   the same, or the nearest product where the card follows none without
///              doubt in-formula             its formula does, for forms that a formula makes of its foods
///              form-listed            its formula's line for the food, or a change that it allows, says the
///              form never
///   yields-to: [rule ids]   not told where one of these rules is
/// {food} is the food's name as the card has it, {form} the words that tell the form or state.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_forbidden_food(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
