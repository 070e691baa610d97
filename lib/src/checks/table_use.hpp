#pragma once

/// A card's figures beside its table, for plots and programs.

#include <sealworthy/finding.hpp>
#include <vector>

#include "reading/reading.hpp"

namespace sealworthy::checks {

/// One entry a jar that a published table was compared with for certain; the same figures once.
std::vector<TableUse> table_uses(const reading::Reading& reading);

}  // namespace sealworthy::checks
