#pragma once

/// A canning day from tested cards: amounts for so many jars, produce to buy, canner loads with their times.
///
///   const auto made = sealworthy::make_plan(checker, {{"tomatoes.yaml", text}}, {.jars = "28 pints"});
///   if (const auto* plan = std::get_if<sealworthy::Plan>(&made)) ...
///
/// Only a card that is `tested` is planned, and the card as it will be canned is checked again: what can't be
/// scaled without losing that is made several times over, and told. Times before and after the process are
/// common practice (rules/planning.yaml). Throws nothing but std::bad_alloc. Cost: a few checks of each card.

#include <sealworthy/checker.hpp>
#include <sealworthy/report.hpp>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace sealworthy {

struct PlanCards {
  std::string path;
  std::string text;  ///< one card or several
};

struct PlanOptions {
  CheckOptions check = {};
  std::string jars = {};  ///< "28", "28 pints"; empty: what the card makes
  std::string have = {};  ///< "30 lb tomatoes": as many jars as that fills; for one card
};

struct PlanLine {
  std::string text;    ///< of one batch; of one jar where `in_all` is said
  std::string in_all;  ///< of a line that goes into every jar: "14 tablespoons"; else ""
};

struct PlannedCard {
  std::string path;
  int document = 1;
  std::string title;
  std::string follows;  ///< id of the tested process
  std::string source;
  std::string jar;         ///< "pint"
  std::string jar_plural;  ///< "pints"
  int jars = 0;
  int batches = 1;    ///< times that the lines below are made
  double factor = 1;  ///< amounts of the card times this
  std::vector<PlanLine> lines;
  std::vector<std::string> buy;  ///< by the published yields: "28 lb, for 28 pints", "about 1/2 bushel"
  std::string method;            ///< "boiling-water", "steam" or "pressure"
  std::string gauge;             ///< "dial", "weighted" or ""
  double minutes = 0;
  std::optional<double> psi;
  std::string headspace;           ///< "1/2 inch"
  std::string holds_for;           ///< "0 to 3,000 ft"
  std::vector<std::string> steps;  ///< the card's own
  std::vector<std::string> notes;  ///< covering, what was assumed, what is short
  std::string card;                ///< YAML; checks as `tested` with the same options
};

/// A stretch of a load's time line.
struct PlanPhase {
  std::string does;
  double shortest = 0, longest = 0;  ///< minutes
  bool process = false;              ///< the tested time itself
  std::string source;
};

struct PlanLoad {
  struct Jars {
    std::size_t card = 0;  ///< index into Plan::cards
    int count = 0;
  };
  std::string canner;  ///< as the kitchen file names it, else the method's
  std::vector<Jars> jars;
  std::vector<PlanPhase> phases;
  double starts_shortest = 0, starts_longest = 0;  ///< minutes after the first load's start
  double shortest = 0, longest = 0;                ///< minutes of this load
};

struct Plan {
  std::string altitude;  ///< "2,400 ft"; empty where the cards' own ranges hold
  std::vector<PlannedCard> cards;
  std::vector<PlanLoad> loads;         ///< one after the other
  double shortest = 0, longest = 0;    ///< minutes in all
  std::vector<std::string> reminders;  ///< water, racks: by the methods used
  std::vector<std::string> notes;
};

/// Every card that can't be planned is an error, with its place.
std::variant<Plan, std::vector<InputError>> make_plan(const Checker& checker,
                                                      std::span<const PlanCards> cards,
                                                      const PlanOptions& options);

std::string plan_text(const Plan& plan, const TextStyle& style);
/// One JSON object; tests/schema/plan.schema.json describes it.
std::string plan_json(const Plan& plan);
/// One page for each card to hang beside the stove; loads nothing.
std::string plan_html(const Plan& plan);

}  // namespace sealworthy
