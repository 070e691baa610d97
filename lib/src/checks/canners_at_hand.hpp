#pragma once

/// What the kitchen's canners can do for one jar of a card. Shared by the kitchen checks; no rule is known
/// here.

#include <string>
#include <vector>

#include "reading/reading.hpp"

namespace sealworthy::checks {

/// True if the canner is of the kind that the jar's process asks for. A pressure canner serves as a
/// boiling-water canner too, its lid not locked.
bool of_its_kind(const reading::CannerAtHand& at_hand, const reading::JarProcess& jar);
/// Those of its kind, in the order of the kitchen file.
std::vector<const reading::CannerAtHand*> of_its_kind(const reading::Reading& reading,
                                                      const reading::JarProcess& jar);

/// What the process asks for and this canner of its kind lacks ("a weighted gauge", "a weight of 10 psi");
/// empty: nothing.
std::string lacking(const reading::CannerAtHand& at_hand, const reading::JarProcess& jar);

/// Other processes that the matched product's table has for this jar at its highest altitude and that the
/// kitchen's canners can do: "30 minutes in a boiling-water canner". Rows from memory are left out.
std::vector<std::string> other_options(const reading::Reading& reading, const reading::JarProcess& jar);

/// False for a process that is meant for other altitudes than the kitchen's.
bool for_this_kitchen(const reading::Reading& reading, const reading::JarProcess& jar);

}  // namespace sealworthy::checks
