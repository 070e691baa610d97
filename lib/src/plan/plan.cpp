#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <memory>
#include <sealworthy/plan.hpp>

#include "checks/against_table.hpp"
#include "checks/canners_at_hand.hpp"
#include "knowledge/knowledge.hpp"
#include "knowledge/recipes.hpp"
#include "plan/batch.hpp"
#include "plan/loads.hpp"
#include "plan/scale.hpp"
#include "plan/syrup.hpp"
#include "quantity/figures.hpp"
#include "reading/build.hpp"
#include "recipe/write_card.hpp"

namespace sealworthy {
namespace {

using plan::Batch;
using reading::JarProcess;
using reading::Reading;

constexpr double rounding = 0.02;  // two amounts within it count as equal

/// What one card is worked with; the reading views into the recipe.
struct Work {
  recipe::Recipe recipe;
  Reading reading;
  const JarProcess* process = nullptr;
};

struct Wanted {
  std::optional<int> jars;
  std::optional<quantity::JarText> jar;
  std::optional<plan::AtHand> have;
};

InputError option_error(std::string option, std::string message, std::string suggestion) {
  return {std::move(option), {}, std::move(message), std::move(suggestion)};
}

std::variant<Wanted, InputError> read_wanted(const PlanOptions& options, const Checker& checker) {
  Wanted wanted;
  const auto wrong = [&](std::string message) {
    return option_error("--jars", std::move(message), "write how many, like 28 or \"28 pints\"");
  };
  if (!options.jars.empty()) {
    int count = 0;
    const char* end = options.jars.data() + options.jars.size();
    const auto plain = std::from_chars(options.jars.data(), end, count);
    if (plain.ec == std::errc() && plain.ptr == end) {
      if (count < 1 || count > 10000)
        return wrong("a plan is for 1 to 10,000 jars, not '" + options.jars + "'");
      wanted.jars = count;
    } else {
      auto yield = quantity::read_yield(options.jars);
      if (auto* error = std::get_if<quantity::FigureError>(&yield)) return wrong(error->message);
      const auto& read = std::get<quantity::Yield>(yield);
      const double many = in_pieces(read.count.low);
      if (!read.count.exact() || many != std::floor(many))
        return wrong("'" + options.jars + "' is no whole number of jars");
      wanted.jars = static_cast<int>(many);
      wanted.jar = read.jar;
    }
  }
  if (!options.have.empty()) {
    plan::AtHand have{options.have,
                      checker.knowledge().catalogue.read_line(options.have, quantity::Units::us)};
    if (!have.read.amount.stated_any() || have.read.foods.empty() || have.read.foods.front().food == nullptr)
      return option_error("--have", "'" + options.have + "' names no amount of a known food",
                          "write it like \"30 lb tomatoes\"");
    if (wanted.jars) return option_error("--have", "it can't go with --jars", "give one of the two");
    wanted.have = std::move(have);
  }
  return wanted;
}

/// Why a card that is not tested can't be planned.
InputError refusal(const RecipeReport& report) {
  InputError error{report.path, report.at, {}, "plan a card that `sealworthy check` calls tested"};
  const std::string name = report.title.empty() ? "this recipe" : "'" + report.title + "'";
  error.message = name + " is " + std::string(to_string(report.verdict)) + ", so it is not planned";
  for (const auto& finding : report.findings) {
    if (report.verdict != Verdict::hazard && finding.severity < Severity::caution &&
        finding.topic != Topic::altitude && report.verdict != Verdict::unreadable)
      continue;
    error.message += ": " + finding.message;
    if (!finding.from_kitchen) error.at = finding.at;
    if (!finding.instead.empty()) error.suggestion = finding.instead;
    return error;
  }
  std::string open;
  for (const auto& point : report.points)
    if (point.state == Point::State::unknown || point.state == Point::State::differs)
      open.append(open.empty() ? "" : ", ").append(to_string(point.kind));
  if (!open.empty()) error.message += ": not known or not as tested: " + open;
  return error;
}

/// The jar and process that are planned: of the size asked for, for this kitchen, and one that a canner of
/// the kitchen can do where there is such.
const JarProcess* choose_process(const Reading& reading, const std::optional<quantity::JarText>& jar) {
  const JarProcess* chosen = nullptr;
  for (const auto& candidate : reading.jars) {
    if (candidate.jar == nullptr || !candidate.size || candidate.process == nullptr ||
        !candidate.process->time)
      continue;
    if (jar && candidate.jar->volume != jar->volume) continue;
    if (!checks::for_this_kitchen(reading, candidate)) continue;
    const auto canners = checks::of_its_kind(reading, candidate);
    const bool able = std::any_of(canners.begin(), canners.end(), [&](const auto* at_hand) {
      return checks::lacking(*at_hand, candidate).empty();
    });
    if (able) return &candidate;
    if (chosen == nullptr) chosen = &candidate;
  }
  return chosen;
}

std::vector<std::string> scaled_lines(const Reading& reading, double factor) {
  std::vector<std::string> lines;
  for (const auto& ingredient : reading.ingredients) {
    const bool as_is = ingredient.read.per_jar || std::abs(factor - 1) < 1e-9;
    lines.push_back(as_is ? std::string(ingredient.line->text)
                          : plan::scaled_line(ingredient.line->text, ingredient.read, factor));
  }
  return lines;
}

std::string makes_words(int jars, const JarProcess& process) {
  return fmt::format("{} {} jar{}", jars, process.jar->name, jars == 1 ? "" : "s");
}

bool tested(const Checker& checker, const std::string& card, const CheckOptions& options) {
  const auto reports = checker.check_text("plan", card, options);
  return reports.size() == 1 && reports.front().verdict == Verdict::tested;
}

class Planner {
 public:
  Planner(const Checker& checker, const PlanOptions& options, Wanted wanted)
      : checker_(checker), options_(options), wanted_(std::move(wanted)) {
    if (options.check.kitchen) settings_.kitchen = &options.check.kitchen->get();
    settings_.altitude = options.check.altitude;
    settings_.today = recipe::read_date(options.check.today);
  }

  void add(const PlanCards& cards) {
    const auto reports = checker_.check_text(cards.path, cards.text, options_.check);
    const auto found = knowledge::find_recipes(cards.path, cards.text, checker_.knowledge(),
                                               {options_.check.all, options_.check.named})
                           .recipes;
    if (reports.empty())
      errors_.push_back({cards.path, {1, 1}, "no canning recipe was found in this file", {}});
    for (std::size_t i = 0; i < reports.size(); ++i) {
      const auto* recipe = i < found.size() ? std::get_if<recipe::Recipe>(&found[i].recipe) : nullptr;
      if (reports[i].verdict != Verdict::tested || recipe == nullptr) {
        errors_.push_back(refusal(reports[i]));
        continue;
      }
      if (auto error = add_card(reports[i], *recipe)) errors_.push_back(std::move(*error));
    }
  }

  std::variant<Plan, std::vector<InputError>> made() {
    if (wanted_.have && plan_.cards.size() + errors_.size() > 1)
      errors_.push_back(option_error("--have", "it is for one card", "plan the others on their own"));
    if (works_.empty() && errors_.empty()) errors_.push_back(option_error({}, "no card is given", {}));
    if (!errors_.empty()) return std::move(errors_);
    const auto& altitude = works_.front()->reading.altitude.kitchen;
    if (altitude) plan_.altitude = quantity::words_of(*altitude);
    plan::fill_loads(plan_, batches_, checker_.knowledge().planning);
    return std::move(plan_);
  }

 private:
  std::optional<InputError> add_card(const RecipeReport& report, const recipe::Recipe& recipe) {
    auto work = std::make_unique<Work>();
    work->recipe = recipe;
    work->reading = reading::build(work->recipe, settings_, checker_.knowledge());
    work->process = choose_process(work->reading, wanted_.jar);
    const auto wrong = [&](std::string message, std::string suggestion) {
      return InputError{report.path, report.at, std::move(message), std::move(suggestion)};
    };
    if (work->process == nullptr)
      return wanted_.jar ? wrong("'" + report.title + "' is not for " + wanted_.jar->name + " jars",
                                 "the jars it is for stand under `jars:`")
                         : wrong("'" + report.title + "' has no time for a jar at this altitude", "add one");
    // The first jar is the one that amounts are told for.
    std::rotate(work->reading.jars.begin(),
                work->reading.jars.begin() + (work->process - work->reading.jars.data()),
                work->reading.jars.end());
    work->process = work->reading.jars.data();
    const auto made = plan::jars_made(work->reading);
    if (!made)
      return wrong("'" + report.title + "' does not say how many jars it makes",
                   "add a line such as `makes: 7 " + work->process->jar->name + " jars`");
    auto jars = jars_wanted(*work, *made, report);
    if (auto* error = std::get_if<InputError>(&jars)) return std::move(*error);
    auto card = planned(*work, report, *made, std::get<int>(jars));
    if (!card)
      return wrong("'" + report.title + "' can't be written for another number of jars and stay tested",
                   "make it as it stands, as often as you need");
    batches_.push_back({plan_.cards.size(), card->jars, &work->reading, work->process});
    plan_.cards.push_back(std::move(*card));
    works_.push_back(std::move(work));
    return std::nullopt;
  }

  std::variant<int, InputError> jars_wanted(const Work& work, double made, const RecipeReport& report) const {
    if (wanted_.jars) return *wanted_.jars;
    if (!wanted_.have) return std::max(1, static_cast<int>(std::floor(made + rounding)));
    bool has = false;
    const auto filled = plan::jars_filled(work.reading, *wanted_.have, made, has);
    if (!filled)
      return option_error(
          "--have",
          has ? "the amounts of '" + wanted_.have->text + "' and of '" + report.title + "' can't be compared"
              : "'" + report.title + "' has no " + wanted_.have->read.name,
          has ? "give a weight" : "name a food of the card");
    const int jars = static_cast<int>(std::floor(filled->jars + rounding));
    if (jars < 1) return option_error("--have", "'" + wanted_.have->text + "' does not fill one jar", "");
    return jars;
  }

  /// The card for so many jars, or nullopt where it would not stay tested.
  std::optional<PlannedCard> planned(const Work& work, const RecipeReport& report, double made,
                                     int jars) const {
    const auto& planning = checker_.knowledge().planning;
    const auto& product = *work.reading.match.product;
    PlannedCard card;
    card.jars = jars;
    card.factor = jars / made;
    if (std::abs(card.factor - 1) <= rounding) card.factor = 1;
    const bool whole = std::find(planning.whole_batches.begin(), planning.whole_batches.end(),
                                 product.acid_class) != planning.whole_batches.end();
    if (!(whole && card.factor != 1) && write(work, jars, card)) {
      describe(work, report, card);
      return card;
    }
    card.batches = std::max(1, static_cast<int>(std::ceil(jars / made - rounding)));
    card.factor = 1;
    const int batch = std::max(1, static_cast<int>(std::floor(made + rounding)));
    card.jars = std::max(1, static_cast<int>(std::floor(made * card.batches + rounding)));
    if (!write(work, batch, card)) return std::nullopt;
    if (card.batches > 1)
      card.notes.push_back(fmt::format(
          "Make the recipe {} times, one after the other: {}.", card.batches,
          whole ? planning.whole_batches_why : "in another amount it would not follow the tested formula"));
    if (card.jars != jars)
      card.notes.push_back(fmt::format("{} asked for; whole batches fill {}.", jars, card.jars));
    describe(work, report, card);
    return card;
  }

  bool write(const Work& work, int jars_of_batch, PlannedCard& card) const {
    const auto lines = scaled_lines(work.reading, card.factor);
    const std::string makes = makes_words(jars_of_batch, *work.process);
    recipe::Recipe scaled = work.recipe;
    for (std::size_t i = 0; i < lines.size(); ++i) scaled.ingredients[i].text = lines[i];
    scaled.makes = recipe::Placed<quantity::Yield>{{}, {}, makes};
    card.card = recipe::write_card(scaled);
    if (!tested(checker_, card.card, options_.check)) return false;
    card.lines.clear();
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const auto& ingredient = work.reading.ingredients[i];
      PlanLine line{lines[i], {}};
      if (ingredient.read.per_jar) {
        const bool other = ingredient.line->per_jar_of &&
                           ingredient.line->per_jar_of->value.volume != work.process->jar->volume;
        if (other) continue;
        line.in_all = plan::amount_times(ingredient.read, card.jars);
      }
      card.lines.push_back(std::move(line));
    }
    return true;
  }

  void describe(const Work& work, const RecipeReport& report, PlannedCard& card) const {
    const auto& process = *work.process;
    const auto& size = work.reading.tables->jars()[static_cast<std::size_t>(*process.size)];
    card.path = report.path;
    card.document = report.document;
    card.title = report.title;
    card.follows = report.matched.id;
    card.source = report.matched.source;
    card.holds_for = report.matched.holds_for;
    card.jar = process.jar->metric ? process.jar->name : size.name;
    card.jar_plural = process.jar->metric ? process.jar->name + " jars" : size.plural;
    card.buy = plan::to_buy(work.reading, card.jars);
    card.method = process.method == reading::MethodKind::pressure ? "pressure"
                  : process.method == reading::MethodKind::steam  ? "steam"
                                                                  : "boiling-water";
    if (process.gauge) card.gauge = *process.gauge == recipe::Gauge::dial ? "dial" : "weighted";
    card.minutes = std::round(in_minutes(process.process->time->value.high));
    if (process.process->pressure)
      card.psi = std::round(in_psi(process.process->pressure->value.high) * 100) / 100;
    if (process.headspace) card.headspace = quantity::words_of(process.headspace->value);
    for (const auto& step : work.recipe.steps) card.steps.emplace_back(step.value);
    for (const auto& assumed : report.assumed) card.notes.push_back("Taken for granted: " + assumed + ".");
    if (auto syrup = plan::syrup_note(work.reading, process, card.jars, checker_.knowledge().planning);
        !syrup.empty())
      card.notes.push_back(std::move(syrup));
    note_jars(work, card);
  }

  void note_jars(const Work& work, PlannedCard& card) const {
    if (work.reading.kitchen == nullptr) return;
    for (const auto& at_hand : work.reading.kitchen->jars)
      if (at_hand.count && at_hand.jar.value.volume == work.process->jar->volume &&
          *at_hand.count < card.jars)
        card.notes.push_back(fmt::format("The kitchen has {} {}; {} more are needed.", *at_hand.count,
                                         card.jar_plural, card.jars - *at_hand.count));
  }

  const Checker& checker_;
  const PlanOptions& options_;
  Wanted wanted_;
  reading::Settings settings_;
  std::vector<std::unique_ptr<Work>> works_;
  std::vector<Batch> batches_;
  std::vector<InputError> errors_;
  Plan plan_;
};

}  // namespace

std::variant<Plan, std::vector<InputError>> make_plan(const Checker& checker,
                                                      std::span<const PlanCards> cards,
                                                      const PlanOptions& options) {
  auto wanted = read_wanted(options, checker);
  if (auto* error = std::get_if<InputError>(&wanted)) return std::vector<InputError>{std::move(*error)};
  Planner planner(checker, options, std::get<Wanted>(std::move(wanted)));
  for (const auto& one : cards) planner.add(one);
  return planner.made();
}

}  // namespace sealworthy
