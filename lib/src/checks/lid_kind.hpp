#pragma once

/// check: lid-kind
/// Lids and jars as `lids:` and `jars:` tell them; where the card says nothing of lids, those of the kitchen
/// file.
///
/// with:
///   lids: [used, ...]     words of `lids:`; "not" or "no" before them is understood
///   jars: [mayonnaise]    words of a jar's text
/// {found} is the text as written.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_lid_kind(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
