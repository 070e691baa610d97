#include "checks/verdict.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "checks/against_table.hpp"
#include "quantity/figures.hpp"

namespace sealworthy::checks {
namespace {

using reading::JarProcess;
using reading::Reading;
using State = Point::State;

constexpr std::size_t kinds = 12;
static_assert(static_cast<std::size_t>(PointKind::altitude) + 1 == kinds);

bool any_pressure(const Reading& reading) {
  return std::any_of(reading.jars.begin(), reading.jars.end(), [](const JarProcess& jar) {
    return jar.process != nullptr && (jar.method == reading::MethodKind::pressure || jar.process->pressure);
  });
}

/// True if the point decides about this product by this method.
bool decides(PointKind kind, const Reading& reading) {
  const tested::Product* product = reading.match.product;
  switch (kind) {
    case PointKind::acid:
      return product != nullptr &&
             (!product->acid_per_jar.empty() || product->acid_class == tested::ProductClass::acidified);
    case PointKind::amounts:
      return product != nullptr && product->formula.has_value();
    case PointKind::gauge:
    case PointKind::pressure:
      return any_pressure(reading);
    default:
      return true;
  }
}

bool fulfilled(const Point& point) { return point.state == State::held || point.state == State::assumed; }

Judged judged_first(const Reading& reading, const JarProcess& jar) {
  return judge(jar, heights_of(jar).front(), card_choice(reading, jar));
}

/// Told for one jar and canner, at heights of its own.
bool same_use(const JarProcess& a, const JarProcess& b) {
  return a.size == b.size && a.method == b.method && a.gauge == b.gauge;
}

Altitude lowest_of(const JarProcess& jar) {
  return jar.process != nullptr && jar.process->altitude ? jar.process->altitude->value.low : feet(0);
}

/// How far up the figures for one jar and canner reach, step by step from sea level: "20 minutes at 0-1,000
/// ft, 25 at 1,001-3,000". Empty where one of them holds nowhere.
std::optional<Altitude> top_of(const JarProcess& first, const Reading& reading) {
  constexpr double between_steps = 10;  // feet: a step ends at 1,000 and the next begins at 1,001
  std::vector<const JarProcess*> steps;
  for (const JarProcess& jar : reading.jars)
    if (same_use(jar, first)) steps.push_back(&jar);
  std::stable_sort(steps.begin(), steps.end(),
                   [](const JarProcess* a, const JarProcess* b) { return lowest_of(*a) < lowest_of(*b); });
  std::optional<Altitude> reached;
  for (const JarProcess* step : steps) {
    const auto top = holds_up_to(*step, card_choice(reading, *step), *reading.tables);
    if (!top) return std::nullopt;
    if (!reached || (lowest_of(*step) <= *reached + feet(between_steps) && *top > *reached)) reached = top;
  }
  return reached;
}

/// Heights at which every jar's figures hold.
std::string range_words(const Reading& reading) {
  std::optional<Altitude> lowest_top;
  for (const JarProcess& jar : reading.jars) {
    const auto top = top_of(jar, reading);
    if (!top) return {};
    if (!lowest_top || *top < *lowest_top) lowest_top = top;
  }
  return lowest_top ? quantity::words(Interval<Altitude>{feet(0), *lowest_top}) : std::string();
}

}  // namespace

bool on_the_process(Topic topic) {
  return topic != Topic::practice && topic != Topic::equipment && topic != Topic::storage;
}

std::vector<Point> deciding_points(const Reading& reading, const std::vector<Point>& recorded) {
  std::array<const Point*, kinds> worst{};
  for (const Point& point : recorded) {
    const Point*& kept = worst[static_cast<std::size_t>(point.kind)];
    if (kept == nullptr || point.state > kept->state) kept = &point;
  }
  std::vector<Point> points;
  points.reserve(kinds);
  for (std::size_t i = 0; i < kinds; ++i) {
    const auto kind = static_cast<PointKind>(i);
    if (worst[i] != nullptr) {
      points.push_back(*worst[i]);
    } else if (decides(kind, reading)) {
      points.push_back({kind, State::unknown, {}, {}});
    }
  }
  return points;
}

bool rests_on_memory(const Reading& reading) {
  const tested::Product* product = reading.match.product;
  if (product == nullptr) return false;
  if (product->formula && product->formula->read == Read::memory) return true;
  if (!product->acid_per_jar.empty() && product->read == Read::memory) return true;
  return std::any_of(reading.jars.begin(), reading.jars.end(), [&](const JarProcess& jar) {
    const auto heights = heights_of(jar);
    return std::any_of(heights.begin(), heights.end(), [&](Altitude height) {
      const Judged judged = judge(jar, height, card_choice(reading, jar));
      return judged.tabled != nullptr && judged.step->read == Read::memory;
    });
  });
}

Verdict decide(const Reading& reading, const std::vector<Point>& points,
               const std::vector<Finding>& findings) {
  Severity worst_on_process = Severity::notice;
  for (const Finding& finding : findings) {
    if (finding.severity >= Severity::warning) return Verdict::hazard;
    if (on_the_process(finding.topic)) worst_on_process = std::max(worst_on_process, finding.severity);
  }
  const tested::Product* product = reading.match.product;
  if (product == nullptr || reading.match.doubtful || product->no_tested_process) return Verdict::unproven;
  if (!reading.recipe->doubts.empty()) return Verdict::unproven;
  if (reading.keep != reading::Keep::shelf || worst_on_process >= Severity::caution) return Verdict::unproven;
  if (!std::all_of(points.begin(), points.end(), fulfilled) || rests_on_memory(reading))
    return Verdict::unproven;
  return Verdict::tested;
}

Matched describe_match(const Reading& reading) {
  Matched matched;
  const tested::Product* product = reading.match.product;
  if (product == nullptr || !reading.match.sure()) return matched;
  matched.id = product->id;
  matched.title = product->title;
  matched.by = reading.match.by == reading::Match::By::follows ? "follows" : "found";
  const Judged judged = judged_first(reading, reading.jars.front());
  matched.source = judged.tabled == nullptr ? product->source : judged.tabled->row->source;
  matched.holds_for = range_words(reading);
  matched.from_memory = rests_on_memory(reading);
  return matched;
}

}  // namespace sealworthy::checks
