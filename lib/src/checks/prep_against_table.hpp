#pragma once

/// check: prep-against-table
/// The work before the jars are filled (a boil, a soak, a cure) as the steps tell it, beside what the matched
/// product's tested process asks for. Silence is left to prep-required; this judges what is told. Speaks only
/// where the match is sure, and makes the point `form` differ.
///
/// with:
///   case: shorter    every time that the steps give with a verb is below the least that the process asks for
///         left-out   the steps take the verb back each time ("no need to soak"), and tell it nowhere
///         reversed   two pieces of work stand in the other order, each told in one step alone
///   verbs: [...]     the verbs judged, each in any form
///
///   heats: [...]     of the verbs those that do the same work: boiled 30 minutes is simmered 30 minutes
///
///   unless: [...]    words, in any form, that make a sentence speak of something else: jars, lids, skins
///
/// {found} is the card's time, {needed} what the process asks for, {words} the sentence as written.
/// Bare sentences of the rule's examples are steps.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_prep_against_table(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
