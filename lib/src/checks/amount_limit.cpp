#include "checks/amount_limit.hpp"

namespace sealworthy::checks {
namespace {

/// Kitchen measures are rounded: a hair over the limit is the limit.
constexpr double slack = 1.02;

/// Weighed fat against a limit in spoons: no kitchen food that rules limit by spoons is lighter than this
/// (whipped fat; common practice), so that a weight counts as at most this much volume.
constexpr double least_density_kg_per_m3 = 850;

}  // namespace

std::optional<AmountLimit> AmountLimit::read(Fields& with, std::string_view key) {
  const auto text = with.text(key);
  if (text.empty()) return std::nullopt;
  const auto amount = quantity::read_amount(text, quantity::Units::us);
  if (!amount || amount->measure.index() == 0 || std::holds_alternative<Interval<Count>>(amount->measure)) {
    with.sink().add(with.at(), "'" + std::string(key) + "' must be a weight or a volume, not '" + text + "'");
    return std::nullopt;
  }
  AmountLimit limit;
  limit.limit_ = *amount;
  return limit;
}

bool AmountLimit::surely_within(const foods::LineReading& line) const {
  if (line.amount.unit == "pinch" || line.amount.unit == "dash") return true;
  const auto* volume_limit = std::get_if<Interval<Volume>>(&limit_.measure);
  const auto* mass_limit = std::get_if<Interval<Mass>>(&limit_.measure);
  if (const auto* volume = std::get_if<Interval<Volume>>(&line.amount.measure))
    if (volume_limit != nullptr) return volume->high <= volume_limit->high * slack;
  if (mass_limit != nullptr) return line.weight && line.weight->high <= mass_limit->high * slack;
  return line.weight && line.weight->high.si() <= volume_limit->high.si() * least_density_kg_per_m3 * slack;
}

}  // namespace sealworthy::checks
