#include "checks/jar_limit.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "checks/against_table.hpp"
#include "checks/cases.hpp"
#include "checks/with_figures.hpp"
#include "reading/jars.hpp"

namespace sealworthy::checks {
namespace {

using reading::JarProcess;
using reading::Reading;
using tested::JarIndex;
using State = Point::State;

enum class Case { larger, between, half_gallon, metric, unsaid };
const std::vector<std::string_view> case_names{"larger", "between", "half-gallon", "metric", "unsaid"};

/// The sizes listed for the jar's method, smallest first.
std::vector<JarIndex> listed_sizes(const Reading& reading, const JarProcess& jar) {
  std::vector<JarIndex> sizes;
  const auto methods = reading::table_methods(jar);
  for (const tested::Row& row : reading.match.product->rows) {
    if (!methods.has(row.method)) continue;
    if (std::find(sizes.begin(), sizes.end(), row.jar) == sizes.end()) sizes.push_back(row.jar);
  }
  std::sort(sizes.begin(), sizes.end());
  return sizes;
}

std::string size_words(const Reading& reading, const std::vector<JarIndex>& sizes) {
  std::string words;
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    if (i > 0) words += i + 1 == sizes.size() ? " or " : ", ";
    words += jar_size_words(*reading.tables, sizes[i]);
  }
  return words;
}

class JarLimit final : public Check {
 public:
  JarLimit(std::span<const Rule* const> rules, Maker& maker)
      : cases_(rules, maker, case_names, [this](const Rule&, Fields& with) {
          const auto from = figure(with, "from", [](std::string_view text) { return whole_jar(text); });
          if (from) half_gallon_ = from;
        }) {}

  void run(const Reading& reading, Results& results) const override {
    for (const JarProcess& jar : reading.jars) check(reading, jar, results);
  }

 private:
  /// A jar's volume as figure() wants it.
  static quantity::Figure<Interval<Volume>> whole_jar(std::string_view text) {
    const auto jar = quantity::read_jar(text);
    if (std::holds_alternative<quantity::FigureError>(jar)) return std::get<quantity::FigureError>(jar);
    return Interval<Volume>::exactly(std::get<0>(jar).volume);
  }

  bool is_half_gallon(const JarProcess& jar) const {
    constexpr double rounding = 0.99;
    return half_gallon_ && jar.jar->volume >= *half_gallon_ * rounding;
  }

  void check(const Reading& reading, const JarProcess& jar, Results& results) const {
    const bool listed = has_method_rows(reading, jar);
    if (jar.jar == nullptr) {
      results.point(PointKind::jar, State::unknown);
      if (listed) tell(Case::unsaid, reading, jar, results);
      return;
    }
    if (!jar.tabled.empty()) {
      results.point(PointKind::jar, State::held, jar.jar->name);
      if (jar.jar->metric && !is_own_size(reading, jar)) tell(Case::metric, reading, jar, results);
      return;
    }
    if (is_half_gallon(jar)) {
      results.point(PointKind::jar, State::differs, jar.jar->name);
      tell(Case::half_gallon, reading, jar, results);
    } else if (!listed) {
      results.point(PointKind::jar, State::unknown, jar.jar->name);
    } else {
      const auto sizes = listed_sizes(reading, jar);
      results.point(PointKind::jar, State::differs, jar.jar->name,
                    jar_size_words(*reading.tables, sizes.back()));
      tell(is_between(reading, jar) ? Case::between : Case::larger, reading, jar, results);
    }
  }

  /// A metric jar with a row of its own needs no word about which US size it is taken for.
  static bool is_own_size(const Reading& reading, const JarProcess& jar) {
    const tested::JarSize& size = reading.tables->jars()[static_cast<std::size_t>(*jar.size)];
    return size.id == jar.jar->name;
  }

  /// True if the jar is none of the sizes that tables are made for, but one between them.
  static bool is_between(const Reading& reading, const JarProcess& jar) {
    if (!jar.size) return false;
    const tested::JarSize& size = reading.tables->jars()[static_cast<std::size_t>(*jar.size)];
    return size.counts_as.has_value() || size.volume > jar.jar->volume;
  }

  void tell(Case which, const Reading& reading, const JarProcess& jar, Results& results) const {
    const Rule* rule = cases_.find(which, reading);
    if (rule == nullptr) return;
    const auto sizes =
        reading.match.product == nullptr ? std::vector<JarIndex>() : listed_sizes(reading, jar);
    results.add(*rule, jar.jar_at,
                {{"found", jar.jar == nullptr ? std::string() : jar.jar->name},
                 {"needed", sizes.empty() ? std::string() : jar_size_words(*reading.tables, sizes.back())},
                 {"sizes", size_words(reading, sizes)},
                 {"counts", jar.size ? jar_size_words(*reading.tables, *jar.size) : std::string()},
                 {"product", reading.match.product == nullptr ? std::string("this food")
                                                              : reading.match.product->title}});
  }

  std::optional<Volume> half_gallon_;
  Cases cases_;  // last: its making fills the figures above
};

}  // namespace

std::unique_ptr<Check> make_jar_limit(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<JarLimit>(rules, maker);
}

}  // namespace sealworthy::checks
