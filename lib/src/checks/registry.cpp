#include <array>

#include "checks/advice.hpp"
#include "checks/check.hpp"
#include "checks/forbidden_food.hpp"

namespace sealworthy::checks {

std::span<const Registered> registry() {
  static constexpr std::array checks{
      Registered{"advice", make_advice},
      Registered{"forbidden-food", make_forbidden_food},
  };
  return checks;
}

}  // namespace sealworthy::checks
