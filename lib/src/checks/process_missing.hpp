#pragma once

/// check: process-missing
/// A card meant for the shelf that gives no process. The finding points at `process:`, else at `recipe:`.
/// Cards for the refrigerator or freezer are left alone by every rule's `keep: shelf`.
///
/// with: nothing; only-if says which cards a rule speaks of.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_process_missing(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
