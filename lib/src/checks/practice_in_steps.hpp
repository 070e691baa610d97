#pragma once

/// Check `practice-in-steps`: a practice told in the steps, whatever the words.
///
/// Parameters (`with:`):
///   told:       list of patterns, each a way of telling it (the language is in phrases/phrases.hpp)
///   unless:     words, phrases or lists of items that make a sentence innocent, for all patterns
///   as:         id of a rule whose `told:` and `unless:` this one shares: a case of it with another severity
///   look-in:    [title, steps]; steps alone unless said
///   yields-to:  ids of rules of this check; silent where one of them speaks of the same sentence
///   with one of `told:` and `as:`.
/// Figures for the rule's words: {words} the sentence as written, shortened; {found} the first figure that a
/// pattern asked for, as written.
/// Bare sentences of the rule's examples are steps.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_practice_in_steps(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
