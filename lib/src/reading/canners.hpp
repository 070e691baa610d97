#pragma once

/// The canners of a kitchen file, their trade words understood.

#include <optional>

#include "reading/methods.hpp"
#include "reading/reading.hpp"

namespace sealworthy::reading {

/// Fills Reading::canners. A kind that is no known word stays `unknown`.
void read_canners(Reading& reading, const Methods& methods);
/// Why a canner of a kitchen file can't be one: its kind is no word for a canner or names a device that none
/// of the tested processes is for, or its kind and gauge contradict each other. nullopt: it can.
std::optional<yaml::Error> refuse_canner(const recipe::Canner& canner, const Methods& methods);

}  // namespace sealworthy::reading
