#pragma once

/// What the formats made of JSON share.

#include <nlohmann/json.hpp>
#include <sealworthy/finding.hpp>
#include <string>

namespace sealworthy::report {

using Json = nlohmann::ordered_json;

/// A recipe as `recipes` of `check --format json` holds it.
Json json_of(const RecipeReport& report);
/// In one line. Bytes that are no UTF-8 (a path may hold them) are replaced, so that it is always valid JSON.
std::string json_text(const Json& json);

}  // namespace sealworthy::report
