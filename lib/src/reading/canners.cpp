#include "reading/canners.hpp"

#include <string>

namespace sealworthy::reading {
namespace {

std::string ticked(std::string_view text) { return "`" + std::string(text) + "`"; }

bool speaks_of_pressure(const recipe::Canner& canner) {
  return canner.gauge || canner.gauge_tested || canner.gauge_error || canner.largest_pressure ||
         !canner.weights.empty();
}

}  // namespace

void read_canners(Reading& reading, const Methods& methods) {
  if (reading.kitchen == nullptr) return;
  for (const recipe::Canner& canner : reading.kitchen->canners) {
    CannerAtHand at_hand{&canner, MethodKind::unknown, {}, {}};
    if (const MethodWord* method = methods.find(canner.kind.value)) {
      at_hand.method = method->kind;
      at_hand.method_name = method->name;
      at_hand.gauge = method->gauge;
    }
    if (canner.gauge) at_hand.gauge = canner.gauge->value;
    reading.canners.push_back(at_hand);
  }
}

std::optional<yaml::Error> refuse_canner(const recipe::Canner& canner, const Methods& methods) {
  const std::string kinds = "Kinds are: boiling water, steam canner, pressure canner.";
  const MethodWord* method = methods.find(canner.kind.value);
  if (method == nullptr)
    return yaml::Error{canner.kind.at, ticked(canner.kind.text) + " is no kind of canner that is known.",
                       kinds};
  if (method->kind == MethodKind::not_accepted)
    return yaml::Error{canner.kind.at, "No tested process is for " + method->name + ".",
                       "Leave it out. " + kinds};
  if (method->kind != MethodKind::pressure && speaks_of_pressure(canner))
    return yaml::Error{canner.kind.at,
                       "This canner is " + method->name + " and yet has a gauge, weights or a pressure.",
                       "Write `kind: pressure canner`, or leave the pressure out."};
  if (method->gauge && canner.gauge && *method->gauge != canner.gauge->value)
    return yaml::Error{canner.gauge->at, "`kind:` and `gauge:` of this canner contradict each other.",
                       "Mend one of the two."};
  return std::nullopt;
}

}  // namespace sealworthy::reading
