#include "reading/altitude.hpp"

#include <algorithm>
#include <cmath>

namespace sealworthy::reading {
namespace {

/// The end of a range that needs more heat; an open range ends where the tables' open bands do.
Altitude worse_end(const Interval<Altitude>& range, const tested::Tables& tables) {
  return std::isinf(range.high.si()) ? std::max(range.low, tables.highest_open()) : range.high;
}

void add_height(std::vector<Altitude>& heights, Altitude height) {
  if (std::find(heights.begin(), heights.end(), height) == heights.end()) heights.push_back(height);
}

const Interval<Altitude>* own_range(const JarProcess& jar) {
  return jar.process != nullptr && jar.process->altitude ? &jar.process->altitude->value : nullptr;
}

/// True if another process for the same jar by the same method is the one meant for the kitchen's altitude.
bool other_serves_kitchen(const Reading& reading, const JarProcess& jar, Altitude kitchen) {
  const Interval<Altitude>* own = own_range(jar);
  if (own == nullptr || (own->low <= kitchen && kitchen <= own->high)) return false;
  return std::any_of(reading.jars.begin(), reading.jars.end(), [&](const JarProcess& other) {
    if (&other == &jar || other.size != jar.size || other.method != jar.method) return false;
    const Interval<Altitude>* range = own_range(other);
    if (range == nullptr) return false;
    // Where none holds the kitchen's altitude, the one that reaches highest stands for it.
    return (range->low <= kitchen && kitchen <= range->high) ||
           (own->high < kitchen && own->high < range->high);
  });
}

}  // namespace

void read_altitude(Reading& reading, const Settings& settings) {
  AltitudeUse& use = reading.altitude;
  if (settings.altitude) {
    use.kitchen = settings.altitude;
    use.from_option = true;
  } else if (settings.kitchen != nullptr && settings.kitchen->altitude) {
    use.kitchen = settings.kitchen->altitude->value;
  }
  std::optional<Altitude> kitchen;
  if (use.kitchen) kitchen = worse_end(*use.kitchen, *reading.tables);
  if (kitchen) add_height(use.judged, *kitchen);
  for (const auto& home : reading.recipe->homes) add_height(use.judged, home.value);
  for (JarProcess& jar : reading.jars) {
    for (const auto& home : reading.recipe->homes)
      if (!other_serves_kitchen(reading, jar, home.value)) add_height(jar.heights, home.value);
    if (kitchen && !other_serves_kitchen(reading, jar, *kitchen)) add_height(jar.heights, *kitchen);
    if (const Interval<Altitude>* range = own_range(jar)) {
      if (!use.card) use.card = jar.process->altitude;
      add_height(jar.heights, worse_end(*range, *reading.tables));
      add_height(use.judged, jar.heights.back());
    }
    std::sort(jar.heights.begin(), jar.heights.end(), std::greater<>());
  }
  std::sort(use.judged.begin(), use.judged.end(), std::greater<>());
}

}  // namespace sealworthy::reading
