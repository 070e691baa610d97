#pragma once

/// check: food-in-steps
/// A food that the steps put in and the list of ingredients lacks: "stir in 2 cups of corn". What was
/// compared with the tested process was the list, so the point `food` is not known then.
///
/// with:
///   verbs: [add, stir]        words behind which stands what is put in
///   particles: [in, up]       words that may stand behind the verb: "stir in"
///   exchange: [swap, fill]    verbs behind which it may also stand behind one of `until`:
///                             "swap beans for corn"
///   until: [to, into, with]   words that end it
///   changes: [nice change]    words that make every food of their sentence one that may be put in:
///                             "mangoes or peaches make a nice change"
///   general: {meat-unspecified: [kind:meat, kind:poultry]}
///                             general words, and the foods of the list that they may mean
///   unless: [when serving]    a sentence with one of these speaks of something else
///   except: [kind:acid]       foods that may be told in the steps alone: ids, kind:, tag:;
///                             neutral ones always may
/// {food} is its name as written.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_food_in_steps(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
