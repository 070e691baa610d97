#pragma once

/// The forms that an English word takes in directions: "turn" -> turns, turned, turning; "jar" -> jars;
/// "leave" -> left, leaving; "tight" -> tightly; "sterilize" -> sterilised.

#include <functional>
#include <string_view>

namespace sealworthy::text {

/// Calls `take` with each form of a folded base word, itself first; the view lasts for the call only.
/// Verbs, nouns and adjectives are not told apart, so some forms are no words; a text does not hold those.
/// A form may come twice. Cost: about fifteen calls, no allocation.
void each_form(std::string_view word, const std::function<void(std::string_view)>& take);

}  // namespace sealworthy::text
