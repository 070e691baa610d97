#include <algorithm>
#include <cmath>
#include <numbers>
#include <sealworthy/acidity.hpp>

#include "science/range.hpp"

namespace sealworthy::science {
namespace {

constexpr double lowest_ph = 0, highest_ph = 14;
constexpr Range amount_range{"amount of acid", "mol/kg", 0, 60};
constexpr Range base_range{"base", "eq/kg", -20, 20};
constexpr Range ph_range{"pH", "", lowest_ph, highest_ph};

/// Davies' term for a step of one charge.
double activity_term(double ionic_strength) {
  const double strength = std::clamp(ionic_strength, 0.0, 0.5);
  const double root = std::sqrt(strength);
  return 0.509 * (root / (1 + root) - 0.3 * strength);
}

/// Mean charge of one acid, and the mean of its square.
struct Charge {
  double mean = 0, square = 0;
};

Charge charge_of(const WeakAcid& acid, double per_h, double gain) {
  double term = 1, all = 1, first = 0, second = 0;
  double step_gain = gain;
  for (int i = 0; i < acid.steps; ++i) {
    term *= acid.ka[static_cast<std::size_t>(i)] * step_gain * per_h;
    step_gain *= gain * gain;
    const double z = i + 1;
    all += term;
    first += z * term;
    second += z * z * term;
  }
  return {first / all, second / all};
}

/// The balance at one ionic strength.
class Balance {
 public:
  Balance(std::span<const WeakAcid> acids, const AcidAmounts& amounts, double base)
      : acids_(acids.first(std::min(acids.size(), weak_acid_limit))), amounts_(amounts), base_(base) {}

  void at_strength(double ionic_strength) { gain_ = std::pow(10, activity_term(ionic_strength)); }

  struct Value {
    double sum = 0, slope = 0;
    double ionic_strength = 0;
  };
  [[nodiscard]] Value at(double ph) const {
    const double h = std::pow(10, -ph);
    const double free_h = h * gain_, free_oh = 1e-14 / h * gain_;  // concentrations of what has an activity
    Value value{free_oh - free_h - base_, free_oh + free_h, (free_oh + free_h + std::abs(base_)) / 2};
    for (std::size_t i = 0; i < acids_.size(); ++i) {
      if (amounts_[i] <= 0) continue;
      const Charge charge = charge_of(acids_[i], 1 / h, gain_);
      value.sum += amounts_[i] * charge.mean;
      value.slope += amounts_[i] * (charge.square - charge.mean * charge.mean);
      value.ionic_strength += amounts_[i] * charge.square / 2;
    }
    value.slope *= std::numbers::ln10;
    return value;
  }

  /// Newton's method, kept between bounds by bisection.
  [[nodiscard]] double root(double start) const {
    double low = lowest_ph, high = highest_ph, ph = start;
    for (int i = 0; i < 200; ++i) {
      const Value value = at(ph);
      if (std::abs(value.sum) < 1e-13) break;
      (value.sum > 0 ? high : low) = ph;
      const double next = ph - value.sum / value.slope;
      const double kept = next > low && next < high ? next : (low + high) / 2;
      if (std::abs(kept - ph) < 1e-15) break;
      ph = kept;
    }
    return ph;
  }

 private:
  std::span<const WeakAcid> acids_;
  const AcidAmounts& amounts_;
  double base_;
  double gain_ = 1;
};

std::optional<OutOfRange> check_amounts(std::span<const WeakAcid> acids, const AcidAmounts& amounts) {
  for (std::size_t i = 0; i < std::min(acids.size(), weak_acid_limit); ++i)
    if (auto error = amount_range.check(amounts[i])) return error;
  return std::nullopt;
}

constexpr int strength_rounds = 40;
constexpr double strength_enough = 1e-9;
constexpr double residual_limit = 1e-9;  // eq/kg

}  // namespace

WeakAcid weak_acid(std::span<const double> pka) {
  WeakAcid acid;
  acid.steps = static_cast<int>(std::min(pka.size(), acid.ka.size()));
  for (std::size_t i = 0; i < static_cast<std::size_t>(acid.steps); ++i) acid.ka[i] = std::pow(10, -pka[i]);
  return acid;
}

WeakAcid weak_acid(std::initializer_list<double> pka) {
  return weak_acid(std::span(pka.begin(), pka.size()));
}

Result<Equilibrium> equilibrium(std::span<const WeakAcid> acids, const AcidAmounts& mol_per_kg,
                                double base_eq_per_kg, Activity activity) {
  if (const auto error = check_amounts(acids, mol_per_kg)) return *error;
  if (const auto error = base_range.check(base_eq_per_kg)) return *error;
  Balance balance(acids, mol_per_kg, base_eq_per_kg);
  double ph = balance.root(4.5);
  auto value = balance.at(ph);
  double strength = 0;
  for (int i = 0; activity == Activity::davies && i < strength_rounds; ++i) {
    if (std::abs(value.ionic_strength - strength) < strength_enough) break;
    strength = value.ionic_strength;
    balance.at_strength(strength);
    ph = balance.root(ph);
    value = balance.at(ph);
  }
  // Beyond the ends there is no root to find, and the balance stays open.
  if (!(std::abs(value.sum) < residual_limit))
    return OutOfRange{"pH", "", value.sum > 0 ? lowest_ph - 1 : highest_ph + 1, lowest_ph, highest_ph};
  return Equilibrium{ph, value.ionic_strength, value.sum};
}

Result<double> base_at(double ph, std::span<const WeakAcid> acids, const AcidAmounts& mol_per_kg,
                       Activity activity) {
  if (const auto error = ph_range.check(ph)) return *error;
  if (const auto error = check_amounts(acids, mol_per_kg)) return *error;
  double base = 0, strength = 0;
  for (int i = 0; i < strength_rounds; ++i) {
    Balance balance(acids, mol_per_kg, base);
    if (activity == Activity::davies) balance.at_strength(strength);
    const auto value = balance.at(ph);
    base += value.sum;
    if (activity == Activity::none || std::abs(value.ionic_strength - strength) < strength_enough) break;
    strength = value.ionic_strength;
  }
  return base;
}

double charge_at(double ph, std::span<const WeakAcid> acids, const AcidAmounts& mol_per_kg,
                 double ionic_strength) {
  const double per_h = std::pow(10, ph), gain = std::pow(10, activity_term(ionic_strength));
  double sum = 0;
  for (std::size_t i = 0; i < std::min(acids.size(), weak_acid_limit); ++i)
    sum += mol_per_kg[i] * charge_of(acids[i], per_h, gain).mean;
  return sum;
}

}  // namespace sealworthy::science
