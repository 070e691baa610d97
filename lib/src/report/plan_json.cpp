#include <nlohmann/json.hpp>
#include <sealworthy/plan.hpp>

namespace sealworthy {
namespace {

using Json = nlohmann::ordered_json;

Json of(const PlannedCard& card) {
  Json json{{"path", card.path},       {"document", card.document}, {"title", card.title},
            {"follows", card.follows}, {"source", card.source},     {"jar", card.jar},
            {"jars", card.jars},       {"batches", card.batches},   {"factor", card.factor},
            {"lines", Json::array()},  {"buy", card.buy},           {"method", card.method}};
  for (const auto& line : card.lines) {
    Json one{{"text", line.text}};
    if (!line.in_all.empty()) one["in_all"] = line.in_all;
    json["lines"].push_back(std::move(one));
  }
  if (!card.gauge.empty()) json["gauge"] = card.gauge;
  json["minutes"] = card.minutes;
  if (card.psi) json["psi"] = *card.psi;
  json["lids"] = card.jars;
  if (!card.headspace.empty()) json["headspace"] = card.headspace;
  if (!card.holds_for.empty()) json["holds_for"] = card.holds_for;
  json["notes"] = card.notes;
  json["card"] = card.card;
  return json;
}

Json of(const PlanLoad& load) {
  Json json{{"canner", load.canner}, {"jars", Json::array()}, {"phases", Json::array()}};
  for (const auto& jars : load.jars) json["jars"].push_back({{"card", jars.card}, {"count", jars.count}});
  for (const auto& phase : load.phases) {
    Json one{{"does", phase.does}, {"minutes", {phase.shortest, phase.longest}}};
    if (phase.process) one["process"] = true;
    one["source"] = phase.source;
    json["phases"].push_back(std::move(one));
  }
  json["starts_minutes"] = {load.starts_shortest, load.starts_longest};
  json["minutes"] = {load.shortest, load.longest};
  return json;
}

}  // namespace

std::string plan_json(const Plan& plan) {
  Json json{{"sealworthy", version()}};
  if (!plan.altitude.empty()) json["altitude"] = plan.altitude;
  json["cards"] = Json::array();
  for (const auto& card : plan.cards) json["cards"].push_back(of(card));
  json["loads"] = Json::array();
  for (const auto& load : plan.loads) json["loads"].push_back(of(load));
  json["minutes"] = {plan.shortest, plan.longest};
  json["reminders"] = plan.reminders;
  json["notes"] = plan.notes;
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace sealworthy
