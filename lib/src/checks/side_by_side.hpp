#pragma once

/// The card beside the tested formula that it is compared with, line by line, for people.

#include <optional>
#include <sealworthy/finding.hpp>

#include "reading/reading.hpp"

namespace sealworthy::checks {

/// nullopt where nothing matches or what matches has no formula.
std::optional<Comparison> side_by_side(const reading::Reading& reading);

}  // namespace sealworthy::checks
