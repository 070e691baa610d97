#include <array>

#include "checks/advice.hpp"
#include "checks/check.hpp"

namespace sealworthy::checks {

std::span<const Registered> registry() {
  static constexpr std::array checks{
      Registered{"advice", make_advice},
  };
  return checks;
}

}  // namespace sealworthy::checks
