#pragma once

/// The pH at which weak acids and bases come to rest: charge balance.
///
/// Every weak acid carries a mean negative charge that follows from its constants and the pH. A food is
/// electrically neutral, so the charge that its acids carry at its own pH equals its strong base (metals less
/// chloride, and the positive groups of protein). In a mixture acids and bases add up, and the one pH at
/// which
///     sum of concentration x mean charge  =  base + [H+] - [OH-]
/// holds is the equilibrium pH. The left side rises steadily with pH, so there is only one.
///
/// Activity: pKa of step i is lowered by (2i - 1) A, A = 0.509 (sqrt(I) / (1 + sqrt(I)) - 0.3 I), I at most
/// 0.5 mol/kg (Davies, 25 C), where I is the ionic strength that comes out. Without it the pH comes out
/// higher, by 0.1 with acetate and up to 0.5 with citrate: that is the strict bound.
///
/// It is the end state: pieces take days to weeks to reach it. It explains or alarms; it clears no recipe.
/// Plain functions, no allocation, no state.

#include <array>
#include <cstddef>
#include <initializer_list>
#include <sealworthy/science.hpp>
#include <span>

namespace sealworthy::science {

constexpr std::size_t weak_acid_limit = 16;

/// Dissociation constants at 25 C and zero ionic strength, up to three steps.
struct WeakAcid {
  std::array<double, 3> ka{};  ///< mol/kg
  int steps = 0;
};
/// From pKa values, in rising order; those after the third are left out.
WeakAcid weak_acid(std::initializer_list<double> pka);
WeakAcid weak_acid(std::span<const double> pka);

/// Concentrations by acid, mol per kg.
using AcidAmounts = std::array<double, weak_acid_limit>;

enum class Activity { none, davies };

struct Equilibrium {
  double ph = 7;
  double ionic_strength = 0;  ///< mol/kg
  double residual = 0;        ///< of the charge balance, eq/kg; below 1e-9
};

/// The pH of acids and strong base together. Ranges: each amount 0 to 60 mol/kg, base -20 to 20 eq/kg
/// (negative: a strong acid), the pH that comes out 0 to 14. At most weak_acid_limit acids are read.
/// Cost: about a microsecond.
Result<Equilibrium> equilibrium(std::span<const WeakAcid> acids, const AcidAmounts& mol_per_kg,
                                double base_eq_per_kg, Activity activity);

/// The strong base that holds the acids at a pH: a food's own base. Ranges as above.
Result<double> base_at(double ph, std::span<const WeakAcid> acids, const AcidAmounts& mol_per_kg,
                       Activity activity);

/// Negative charge that acids carry at a pH, eq/kg, at an ionic strength (0: without activity).
double charge_at(double ph, std::span<const WeakAcid> acids, const AcidAmounts& mol_per_kg,
                 double ionic_strength);

}  // namespace sealworthy::science
