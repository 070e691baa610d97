#pragma once

/// The `science` object of a report.

#include <nlohmann/json.hpp>
#include <sealworthy/study.hpp>

namespace sealworthy::report {

nlohmann::ordered_json science_json(const Study& study);

}  // namespace sealworthy::report
