#include "checks/table_use.hpp"

#include <cmath>

#include "checks/against_table.hpp"

namespace sealworthy::checks {
namespace {

/// Figures went through SI units; tables print whole feet and psi, and no more than a thousandth is said.
double rounded(double value) { return std::isfinite(value) ? std::round(value * 1000) / 1000 : value; }

TableUse use_of(const reading::Reading& reading, const reading::JarProcess& jar, const Judged& judged) {
  TableUse use;
  if (jar.size) use.jar = jar_size_words(*reading.tables, *jar.size);
  use.method = tested::to_string(judged.tabled->row->method);
  if (jar.process->time) use.minutes = rounded(in_minutes(jar.process->time->value.low));
  if (jar.process->pressure) use.psi = rounded(in_psi(jar.process->pressure->value.low));
  for (const Altitude height : jar.heights) use.judged_at_ft.push_back(rounded(in_feet(height)));
  for (const auto& step : judged.tabled->option->steps) {
    if (step.not_recommended) continue;
    TableStep out{
        rounded(in_feet(step.band.from)), rounded(in_feet(step.band.to)), rounded(in_minutes(step.time)), {}};
    if (step.pressure) out.psi = rounded(in_psi(*step.pressure));
    use.steps.push_back(out);
  }
  return use;
}

}  // namespace

std::vector<TableUse> table_uses(const reading::Reading& reading) {
  std::vector<TableUse> uses;
  if (!reading.match.sure()) return uses;
  for (const auto& jar : reading.jars) {
    if (jar.process == nullptr) continue;
    const Judged judged = judge(jar, heights_of(jar).front(), card_choice(reading, jar));
    if (judged.tabled != nullptr) uses.push_back(use_of(reading, jar, judged));
  }
  return uses;
}

}  // namespace sealworthy::checks
