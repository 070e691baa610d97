#include "prose/open_processes.hpp"

#include <algorithm>

namespace sealworthy::prose {
namespace {

using recipe::Process;
using Jars = std::vector<recipe::Placed<quantity::JarText>>;

bool holds(const Jars& jars, const quantity::JarText& jar) {
  return std::any_of(jars.begin(), jars.end(), [&](const auto& j) { return j.value.volume == jar.volume; });
}

/// Sizes that are filled and that no process names.
Jars rest_of(const recipe::Recipe& recipe, const std::vector<Sentence>& sentences) {
  Jars rest;
  for (const Sentence& sentence : sentences) {
    if (!sentence.has(Sense::fill)) continue;
    for (const Mark& mark : sentence.marks) {
      if (mark.kind != Mark::Kind::jar || mark.denied || sentence.polarity.supposed[mark.first]) continue;
      const bool named = std::any_of(recipe.processes.begin(), recipe.processes.end(),
                                     [&](const Process& process) { return holds(process.jars, mark.jar); });
      if (!named && !holds(rest, mark.jar))
        rest.push_back({mark.jar, sentence.at(mark.first), sentence.words(mark.first, mark.last)});
    }
  }
  return rest;
}

bool beside(const Process& open, const Process& other) {
  const bool method = open.method && other.method && open.method->value == other.method->value;
  const bool heights = !open.altitude || !other.altitude || open.altitude->value == other.altitude->value;
  return method && heights && open.pressure.has_value() == other.pressure.has_value();
}

}  // namespace

void give_open_processes_the_rest(recipe::Recipe& recipe, const std::vector<Sentence>& sentences) {
  const Jars rest = rest_of(recipe, sentences);
  if (rest.empty()) return;
  Jars named;
  for (const Process& process : recipe.processes)
    named.insert(named.end(), process.jars.begin(), process.jars.end());
  for (Process& open : recipe.processes) {
    if (!open.jars.empty()) continue;
    const bool each_has_its_own = std::all_of(named.begin(), named.end(), [&](const auto& jar) {
      return std::any_of(recipe.processes.begin(), recipe.processes.end(), [&](const Process& other) {
        return &other != &open && holds(other.jars, jar.value) && beside(open, other);
      });
    });
    if (each_has_its_own) open.jars = rest;
  }
}

}  // namespace sealworthy::prose
