#include "plan/loads.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "checks/canners_at_hand.hpp"
#include "quantity/figures.hpp"

namespace sealworthy::plan {
namespace {

using reading::MethodKind;

/// The low-temperature treatment is done in a boiling-water canner.
MethodKind canner_kind(const reading::JarProcess& process) {
  return process.method == MethodKind::low_temperature ? MethodKind::boiling_water : process.method;
}

int usual_load(const Planning& planning, const tested::Tables& tables, tested::JarIndex jar) {
  const auto found = planning.loads.find(tables.jars()[static_cast<std::size_t>(jar)].id);
  return found == planning.loads.end() ? 1 : found->second;
}

/// What a canner that tells its holds takes of this jar; 0: it names only smaller ones.
int told_load(const recipe::Canner& canner, const Batch& batch, const Planning& planning) {
  const auto& tables = *batch.reading->tables;
  const Volume own = batch.process->jar->volume;
  int same = 0;
  int larger = 0;
  for (const auto& hold : canner.holds) {
    const auto& jars = hold.value.jars;
    const int count = static_cast<int>(in_pieces(jars.count.low));
    if (!jars.jar || jars.jar->volume == own) {
      same = std::max(same, count);
    } else if (jars.jar->volume > own) {
      const auto size = tables.jar_size(*jars.jar);
      // A canner for as many large jars as a usual one takes as many small ones as a usual one.
      const bool usual = size && count >= usual_load(planning, tables, *size);
      larger = std::max(larger,
                        usual ? std::max(count, usual_load(planning, tables, *batch.process->size)) : count);
    }
  }
  return same > 0 ? same : larger;
}

PlanPhase process_phase(const PlannedCard& card) {
  std::string does = fmt::format("process {} minutes", card.minutes);
  if (card.psi) does += fmt::format(" at {} psi", quantity::kitchen_number(*card.psi));
  if (!card.gauge.empty()) does += " (" + card.gauge + " gauge)";
  return {does, card.minutes, card.minutes, true, card.source};
}

PlanLoad make_load(const Plan& plan, const Batch& batch, const Capacity& capacity, const Planning& planning) {
  PlanLoad load;
  load.canner = capacity.canner;
  const MethodKind kind = canner_kind(*batch.process);
  for (const bool before : {true, false}) {
    for (const auto& phase : planning.phases)
      if (phase.method == kind && phase.before == before)
        load.phases.push_back({phase.does, phase.minutes.low, phase.minutes.high, false, phase.source});
    if (before) load.phases.push_back(process_phase(plan.cards[batch.card]));
  }
  for (const auto& phase : load.phases) {
    load.shortest += phase.shortest;
    load.longest += phase.longest;
  }
  return load;
}

/// True if the two may stand in one canner at one time.
bool together(const Plan& plan, const Batch& a, const Batch& b) {
  const auto& one = plan.cards[a.card];
  const auto& two = plan.cards[b.card];
  return one.method == two.method && one.gauge == two.gauge && one.minutes == two.minutes &&
         one.psi == two.psi && one.jar == two.jar;
}

}  // namespace

Capacity capacity_of(const Batch& batch, const Planning& planning) {
  Capacity usual{usual_load(planning, *batch.reading->tables, *batch.process->size),
                 std::string(batch.process->method_name), false};
  std::optional<Capacity> told;
  for (const auto* at_hand : checks::of_its_kind(*batch.reading, *batch.process)) {
    if (!checks::lacking(*at_hand, *batch.process).empty()) continue;
    // A pressure canner with its lid unlocked is the second choice for boiling water.
    if (batch.process->method != MethodKind::pressure && at_hand->method == MethodKind::pressure && told)
      continue;
    const int jars = told_load(*at_hand->canner, batch, planning);
    if (usual.canner == batch.process->method_name) usual.canner = std::string(at_hand->canner->kind.text);
    if (jars > 0 && (!told || jars > told->jars))
      told = Capacity{jars, std::string(at_hand->canner->kind.text), true};
  }
  return told ? *told : usual;
}

void fill_loads(Plan& plan, const std::vector<Batch>& batches, const Planning& planning) {
  struct Open {
    std::size_t load;
    Batch batch;
    int room;
  };
  std::vector<Open> open;
  for (const Batch& batch : batches) {
    const Capacity capacity = capacity_of(batch, planning);
    if (!capacity.told)
      plan.notes.push_back(
          fmt::format("The kitchen file does not say how many {} the canner holds: {} a load are taken "
                      "(common practice).",
                      plan.cards[batch.card].jar_plural, capacity.jars));
    int left = batch.jars;
    for (auto& other : open) {
      if (left == 0 || other.room == 0 || !together(plan, batch, other.batch)) continue;
      const int some = std::min(left, other.room);
      plan.loads[other.load].jars.push_back({batch.card, some});
      other.room -= some;
      left -= some;
    }
    while (left > 0) {
      const int some = std::min(left, capacity.jars);
      plan.loads.push_back(make_load(plan, batch, capacity, planning));
      plan.loads.back().jars.push_back({batch.card, some});
      open.push_back({plan.loads.size() - 1, batch, capacity.jars - some});
      left -= some;
    }
    for (const auto& [method, says] : planning.reminders) {
      const bool known =
          std::find(plan.reminders.begin(), plan.reminders.end(), says) != plan.reminders.end();
      if (method == canner_kind(*batch.process) && !known) plan.reminders.push_back(says);
    }
  }
  for (std::size_t i = 0; i < plan.loads.size(); ++i) {
    auto& load = plan.loads[i];
    if (i > 0) {
      load.phases.insert(load.phases.begin(), PlanPhase{planning.change_over_does, planning.change_over,
                                                        planning.change_over, false, "common practice"});
      load.shortest += planning.change_over;
      load.longest += planning.change_over;
    }
    load.starts_shortest = plan.shortest;
    load.starts_longest = plan.longest;
    plan.shortest += load.shortest;
    plan.longest += load.longest;
  }
}

}  // namespace sealworthy::plan
