#include <array>

#include "checks/acid_kind.hpp"
#include "checks/acid_per_jar.hpp"
#include "checks/acidity_bound.hpp"
#include "checks/advice.hpp"
#include "checks/altitude_known.hpp"
#include "checks/amounts_against_formula.hpp"
#include "checks/canner_fit.hpp"
#include "checks/check.hpp"
#include "checks/directions_clear.hpp"
#include "checks/food_in_steps.hpp"
#include "checks/forbidden_food.hpp"
#include "checks/form_against_formula.hpp"
#include "checks/form_against_table.hpp"
#include "checks/gauge_error.hpp"
#include "checks/gauge_test_due.hpp"
#include "checks/headspace_against_table.hpp"
#include "checks/jar_limit.hpp"
#include "checks/kitchen_fit.hpp"
#include "checks/kitchen_stock.hpp"
#include "checks/lid_kind.hpp"
#include "checks/limits_of_proof.hpp"
#include "checks/liquid_required.hpp"
#include "checks/match_to_tested.hpp"
#include "checks/method_against_acid_class.hpp"
#include "checks/method_against_table.hpp"
#include "checks/method_not_accepted.hpp"
#include "checks/mixture_longest_process.hpp"
#include "checks/pack_against_table.hpp"
#include "checks/practice_in_steps.hpp"
#include "checks/prep_against_table.hpp"
#include "checks/prep_required.hpp"
#include "checks/pressure_against_table.hpp"
#include "checks/process_missing.hpp"
#include "checks/sterile_jars.hpp"
#include "checks/time_against_table.hpp"
#include "checks/weak_brine.hpp"
#include "checks/yield_against_formula.hpp"

namespace sealworthy::checks {

std::span<const Registered> registry() {
  static constexpr std::array checks{
      Registered{"acid-kind", make_acid_kind},
      Registered{"acid-per-jar", make_acid_per_jar},
      Registered{"advice", make_advice},
      Registered{"altitude-known", make_altitude_known},
      Registered{"amounts-against-formula", make_amounts_against_formula},
      Registered{"canner-fit", make_canner_fit},
      Registered{"directions-clear", make_directions_clear},
      Registered{"food-in-steps", make_food_in_steps},
      Registered{"forbidden-food", make_forbidden_food},
      Registered{"form-against-formula", make_form_against_formula},
      Registered{"form-against-table", make_form_against_table},
      Registered{"gauge-error", make_gauge_error},
      Registered{"gauge-test-due", make_gauge_test_due},
      Registered{"headspace-against-table", make_headspace_against_table},
      Registered{"jar-limit", make_jar_limit},
      Registered{"kitchen-fit", make_kitchen_fit},
      Registered{"kitchen-stock", make_kitchen_stock},
      Registered{"lid-kind", make_lid_kind},
      Registered{"limits-of-proof", make_limits_of_proof},
      Registered{"liquid-required", make_liquid_required},
      Registered{"match-to-tested", make_match_to_tested},
      Registered{"method-against-acid-class", make_method_against_acid_class},
      Registered{"method-against-table", make_method_against_table},
      Registered{"method-not-accepted", make_method_not_accepted},
      Registered{"mixture-longest-process", make_mixture_longest_process},
      Registered{"pack-against-table", make_pack_against_table},
      Registered{"prep-against-table", make_prep_against_table},
      Registered{"prep-required", make_prep_required},
      Registered{"pressure-against-table", make_pressure_against_table},
      Registered{"process-missing", make_process_missing},
      Registered{"sterile-jars", make_sterile_jars},
      Registered{"time-against-table", make_time_against_table},
      Registered{"practice-in-steps", make_practice_in_steps},
      Registered{"weak-brine", make_weak_brine},
      Registered{"yield-against-formula", make_yield_against_formula},
      Registered{"acidity-bound", make_acidity_bound},  // last: it looks at what the others recorded
  };
  return checks;
}

}  // namespace sealworthy::checks
