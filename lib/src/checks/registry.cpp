#include <array>

#include "checks/acid_kind.hpp"
#include "checks/advice.hpp"
#include "checks/canner_fit.hpp"
#include "checks/check.hpp"
#include "checks/forbidden_food.hpp"
#include "checks/form_against_table.hpp"
#include "checks/gauge_test_due.hpp"
#include "checks/lid_kind.hpp"
#include "checks/liquid_required.hpp"
#include "checks/match_to_tested.hpp"
#include "checks/method_not_accepted.hpp"
#include "checks/mixture_longest_process.hpp"
#include "checks/prep_required.hpp"
#include "checks/process_missing.hpp"
#include "checks/sterile_jars.hpp"

namespace sealworthy::checks {

std::span<const Registered> registry() {
  static constexpr std::array checks{
      Registered{"acid-kind", make_acid_kind},
      Registered{"advice", make_advice},
      Registered{"canner-fit", make_canner_fit},
      Registered{"forbidden-food", make_forbidden_food},
      Registered{"form-against-table", make_form_against_table},
      Registered{"gauge-test-due", make_gauge_test_due},
      Registered{"lid-kind", make_lid_kind},
      Registered{"liquid-required", make_liquid_required},
      Registered{"match-to-tested", make_match_to_tested},
      Registered{"method-not-accepted", make_method_not_accepted},
      Registered{"mixture-longest-process", make_mixture_longest_process},
      Registered{"prep-required", make_prep_required},
      Registered{"process-missing", make_process_missing},
      Registered{"sterile-jars", make_sterile_jars},
  };
  return checks;
}

}  // namespace sealworthy::checks
