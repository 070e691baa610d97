#pragma once

/// Jars into canner loads, and the time line of the day.

#include <sealworthy/plan.hpp>
#include <vector>

#include "plan/planning.hpp"
#include "reading/reading.hpp"
#include "tested/tables.hpp"

namespace sealworthy::plan {

/// One card's jars on their way into the canner.
struct Batch {
  std::size_t card = 0;  ///< index into Plan::cards
  int jars = 0;
  const reading::Reading* reading = nullptr;
  const reading::JarProcess* process = nullptr;
};

/// How many jars of the batch's size go into one load, and the canner that takes them.
struct Capacity {
  int jars = 0;
  std::string canner;
  bool told = false;  ///< by the kitchen file; else that of a usual canner
};
Capacity capacity_of(const Batch& batch, const Planning& planning);

/// Fills loads, times and reminders. What is left over of two cards goes together where jar, canner, time and
/// pressure are the same.
void fill_loads(Plan& plan, const std::vector<Batch>& batches, const Planning& planning);

}  // namespace sealworthy::plan
