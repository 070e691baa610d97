#pragma once

/// Answers of `lookup` for people and for programs.

#include <sealworthy/lookup.hpp>
#include <sealworthy/report.hpp>
#include <string>

namespace sealworthy {

std::string lookup_text(const LookupResult& result, const TextStyle& style);
/// One JSON object; tests/schema/lookup.schema.json describes it.
std::string lookup_json(const LookupResult& result);

}  // namespace sealworthy
