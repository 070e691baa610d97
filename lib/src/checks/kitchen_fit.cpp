#include "checks/kitchen_fit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>
#include <vector>

#include "checks/against_table.hpp"
#include "checks/canners_at_hand.hpp"
#include "checks/cases.hpp"
#include "checks/phrases.hpp"
#include "quantity/figures.hpp"

namespace sealworthy::checks {
namespace {

using reading::CannerAtHand;
using reading::JarProcess;
using reading::MethodKind;
using reading::Reading;
using recipe::VesselSize;

enum class Case { none, other, jar, shallow, no_rack, burner, stove };
const std::vector<std::string_view> case_names{"none",    "other",  "jar",  "shallow",
                                               "no-rack", "burner", "stove"};

using Canners = std::vector<const CannerAtHand*>;

std::string inches(VesselSize size) { return quantity::words(headspace_inches(recipe::in_inches(size))); }

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
  return fmt::format("{}", fmt::join(parts, between));
}

std::string kinds_of(const Reading& reading) {
  std::vector<std::string> kinds;
  for (const CannerAtHand& at_hand : reading.canners) {
    std::string kind(at_hand.canner->kind.text);
    if (at_hand.gauge) kind += *at_hand.gauge == recipe::Gauge::dial ? " (dial gauge)" : " (weighted gauge)";
    kinds.push_back(std::move(kind));
  }
  return joined(kinds, ", ");
}

/// What the canner holds, where it names jars and all of them are smaller; else empty.
std::string only_smaller(const recipe::Canner& canner, Volume jar) {
  constexpr double rounding = 1.06;  // a litre in a canner for quarts
  std::vector<std::string> held;
  for (const auto& hold : canner.holds) {
    if (!hold.value.jars.jar || hold.value.jars.jar->volume * rounding >= jar) return {};
    held.emplace_back(hold.text);
  }
  return joined(held, ", ");
}

class KitchenFit final : public Check {
 public:
  KitchenFit(std::span<const Rule* const> rules, Maker& maker)
      : cases_(rules, maker, case_names, [this](const Rule& rule, Fields& with) { read_more(rule, with); }) {}

  void run(const Reading& reading, Results& results) const override {
    if (reading.kitchen == nullptr || !reading.processed()) return;
    stove(reading, results);
    if (reading.canners.empty()) return;
    for (const JarProcess& jar : reading.jars)
      if (for_this_kitchen(reading, jar)) check(reading, jar, results);
  }

 private:
  void read_more(const Rule& rule, Fields& with) {
    if (const yaml::Node* heights = with.find("heights"))
      for (const auto& entry : heights->entries)
        if (const auto size = vessel(entry.value, with)) heights_[std::string(entry.key)] = *size;
    if (const yaml::Node* add = with.find("add")) add_ = vessel(*add, with).value_or(VesselSize());
    if (const yaml::Node* over = with.find("over")) over_ = vessel(*over, with).value_or(VesselSize());
    if (const auto stoves = with.list("stoves"); !stoves.empty()) stoves_[&rule] = Phrases(stoves);
  }

  static std::optional<VesselSize> vessel(const yaml::Node& node, Fields& with) {
    const auto read = quantity::read_piece_size(node.text);
    if (const auto* error = std::get_if<quantity::FigureError>(&read)) {
      with.sink().add(node.at, error->message, error->suggestion);
      return std::nullopt;
    }
    return VesselSize::from_si(std::get<Interval<PieceSize>>(read).low.si());
  }

  void check(const Reading& reading, const JarProcess& jar, Results& results) const {
    if (jar.method == MethodKind::unknown || jar.method == MethodKind::not_accepted) return;
    const Canners canners = of_its_kind(reading, jar);
    if (!able(reading, jar, canners, results)) return;
    jar_size(reading, jar, canners, results);
    if (jar.method == MethodKind::boiling_water) {
      depth(reading, jar, canners, results);
      burner(reading, canners, results);
    }
    rack(reading, canners, results);
  }

  void tell(Case which, const Reading& reading, Position at, const Figures& figures, Results& results) const {
    if (const Rule* rule = cases_.find(which, reading)) results.add(*rule, at, figures).from_kitchen = true;
  }

  /// False where no canner does the process; it has been told.
  bool able(const Reading& reading, const JarProcess& jar, const Canners& canners, Results& results) const {
    std::string needed(jar.method_name);
    Position at = reading.canners.front().canner->at;
    for (const auto* at_hand : canners) {
      const std::string lacks = lacking(*at_hand, jar);
      if (lacks.empty()) return true;
      needed = lacks;
      at = at_hand->canner->at;
    }
    const auto options = other_options(reading, jar);
    tell(options.empty() ? Case::none : Case::other, reading, at,
         {{"needed", needed}, {"found", kinds_of(reading)}, {"other", joined(options, ", or ")}}, results);
    return false;
  }

  void jar_size(const Reading& reading, const JarProcess& jar, const Canners& canners,
                Results& results) const {
    if (jar.jar == nullptr) return;
    std::string held;
    Position at;
    for (const auto* at_hand : canners) {
      if (at_hand->canner->holds.empty()) return;
      held = only_smaller(*at_hand->canner, jar.jar->volume);
      if (held.empty()) return;
      at = at_hand->canner->holds.front().at;
    }
    tell(Case::jar, reading, at, {{"needed", jar_words(jar)}, {"found", held}}, results);
  }

  void depth(const Reading& reading, const JarProcess& jar, const Canners& canners, Results& results) const {
    if (!jar.size) return;
    const auto height = heights_.find(reading.tables->jars()[static_cast<std::size_t>(*jar.size)].id);
    if (height == heights_.end()) return;
    const VesselSize needed = height->second + add_;
    const recipe::Placed<VesselSize>* shallow = nullptr;
    for (const auto* at_hand : canners) {
      if (at_hand->method == MethodKind::pressure && !at_hand->canner->depth) continue;
      if (!at_hand->canner->depth || at_hand->canner->depth->value >= needed) return;
      shallow = &*at_hand->canner->depth;
    }
    if (shallow == nullptr) return;
    tell(Case::shallow, reading, shallow->at,
         {{"needed", inches(needed)}, {"found", std::string(shallow->text)}, {"jar", jar_words(jar)}},
         results);
  }

  void burner(const Reading& reading, const Canners& canners, Results& results) const {
    const auto& stove = reading.kitchen->stove;
    const Rule* rule = cases_.find(Case::burner, reading);
    if (!stove || !stove->kind || !stove->burner || rule == nullptr || !is_stove(*rule, *stove)) return;
    const recipe::Placed<VesselSize>* wide = nullptr;
    for (const auto* at_hand : canners) {
      if (at_hand->method == MethodKind::pressure) continue;
      if (!at_hand->canner->width || at_hand->canner->width->value <= stove->burner->value + over_) return;
      wide = &*at_hand->canner->width;
    }
    if (wide == nullptr) return;
    tell(Case::burner, reading, wide->at,
         {{"found", std::string(wide->text)}, {"needed", inches(stove->burner->value + over_)}}, results);
  }

  void rack(const Reading& reading, const Canners& canners, Results& results) const {
    for (const auto* at_hand : canners)
      if (!at_hand->canner->rack || at_hand->canner->rack->value) return;
    tell(Case::no_rack, reading, canners.front()->canner->rack->at, {}, results);
  }

  void stove(const Reading& reading, Results& results) const {
    const auto& stove = reading.kitchen->stove;
    const Rule* rule = cases_.find(Case::stove, reading);
    if (!stove || !stove->kind || rule == nullptr || !is_stove(*rule, *stove)) return;
    tell(Case::stove, reading, stove->kind->at, {{"found", std::string(stove->kind->text)}}, results);
  }

  bool is_stove(const Rule& rule, const recipe::Stove& stove) const {
    const auto phrases = stoves_.find(&rule);
    return phrases != stoves_.end() && !phrases->second.in(text::Words(stove.kind->value)).empty();
  }

  // Filled while cases_ is made.
  std::map<std::string, VesselSize, std::less<>> heights_;
  std::map<const Rule*, Phrases> stoves_;
  VesselSize add_;
  VesselSize over_;
  Cases cases_;
};

}  // namespace

std::unique_ptr<Check> make_kitchen_fit(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<KitchenFit>(rules, maker);
}

}  // namespace sealworthy::checks
