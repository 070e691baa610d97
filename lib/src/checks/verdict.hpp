#pragma once

/// What the points and findings of one card come to. `tested` needs every deciding point of one published
/// process held or assumed; a point that no check has recorded counts as unknown, so that a check that is
/// missing can never clear a card.

#include <sealworthy/finding.hpp>
#include <vector>

#include "checks/check.hpp"
#include "reading/reading.hpp"

namespace sealworthy::checks {

/// One point a kind: the worst of those recorded, unknown where a deciding one was not recorded. In the order
/// of PointKind.
std::vector<Point> deciding_points(const reading::Reading& reading, const std::vector<Point>& recorded);

/// `points` as deciding_points gives them.
Verdict decide(const reading::Reading& reading, const std::vector<Point>& points,
               const std::vector<Finding>& findings);

/// The process compared with, its source, and the altitudes at which the card's figures meet its table.
Matched describe_match(const reading::Reading& reading);

/// True where a figure that the card was compared with rests on memory.
bool rests_on_memory(const reading::Reading& reading);

/// A caution about handling (practice, equipment, storage) may stand beside `tested`; one about these may
/// not.
bool on_the_process(Topic topic);

}  // namespace sealworthy::checks
