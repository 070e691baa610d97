#include <cmath>
#include <sealworthy/formats.hpp>
#include <sealworthy/report.hpp>
#include <utility>

#include "report/json_parts.hpp"
#include "report/study.hpp"

namespace sealworthy {
namespace {

using report::Json;
using report::json_text;

Json of(const Finding& finding) {
  Json json{{"rule", finding.rule},
            {"severity", to_string(finding.severity)},
            {"topic", to_string(finding.topic)},
            {"line", finding.at.line},
            {"column", finding.at.column},
            {"message", finding.message},
            {"why", finding.why},
            {"instead", finding.instead},
            {"sources", finding.sources}};
  if (!finding.meaning.empty()) json["meaning"] = finding.meaning;
  if (!finding.found.empty()) json["found"] = finding.found;
  if (!finding.needed.empty()) json["needed"] = finding.needed;
  if (finding.from_kitchen) json["from"] = "kitchen";
  if (!finding.accepted_because.empty()) json["accepted"] = finding.accepted_because;
  if (!finding.accepted_until.empty() && finding.accepted_because.empty())
    json["accepted_until"] = finding.accepted_until;
  if (finding.known) json["known"] = true;
  return json;
}

Json of(const Point& point) {
  Json json{{"point", to_string(point.kind)}, {"state", to_string(point.state)}};
  if (!point.found.empty()) json["found"] = point.found;
  if (!point.needed.empty()) json["needed"] = point.needed;
  return json;
}

Json of(const Matched& matched) {
  if (matched.id.empty()) return Json{{"id", nullptr}};
  Json json{{"id", matched.id}, {"by", matched.by}, {"title", matched.title}, {"source", matched.source}};
  if (!matched.holds_for.empty()) json["holds_for"] = matched.holds_for;
  if (matched.from_memory) json["from_memory"] = true;
  return json;
}

Json of(const Comparison& comparison) {
  Json json{{"id", comparison.id},
            {"title", comparison.title},
            {"batches", comparison.factor},
            {"lines", Json::array()}};
  for (const auto& line : comparison.lines) {
    Json one{{"mark", to_string(line.mark)}, {"card", line.card}, {"published", line.published}};
    if (!line.note.empty()) one["note"] = line.note;
    if (line.percent) one["percent"] = *line.percent;
    if (line.at.line > 0) one["line"] = line.at.line;
    json["lines"].push_back(std::move(one));
  }
  return json;
}

Json of(const TableUse& use) {
  Json json{{"jar", use.jar}, {"method", use.method}};
  if (use.minutes) json["minutes"] = *use.minutes;
  if (use.psi) json["psi"] = *use.psi;
  json["judged_at_ft"] = use.judged_at_ft;
  json["steps"] = Json::array();
  for (const auto& step : use.steps) {
    Json band{{"from_ft", step.from_ft}};
    if (std::isfinite(step.to_ft)) band["to_ft"] = step.to_ft;
    band["minutes"] = step.minutes;
    if (step.psi) band["psi"] = *step.psi;
    json["steps"].push_back(std::move(band));
  }
  return json;
}

}  // namespace

namespace report {

Json json_of(const RecipeReport& report) {
  Json json{{"path", report.path},           {"document", report.document},
            {"title", report.title},         {"verdict", to_string(report.verdict)},
            {"matched", of(report.matched)}, {"findings", Json::array()}};
  for (const auto& finding : report.findings) json["findings"].push_back(of(finding));
  if (report.verdict == Verdict::tested) json["assumed"] = report.assumed;
  json["points"] = Json::array();
  for (const auto& point : report.points) json["points"].push_back(of(point));
  if (report.compared) json["compared"] = of(*report.compared);
  if (!report.kitchen.empty()) json["kitchen"] = report.kitchen;
  if (!report.tables.empty()) {
    json["tables"] = Json::array();
    for (const auto& use : report.tables) json["tables"].push_back(of(use));
  }
  if (report.study) json["science"] = report::science_json(*report.study);
  return json;
}

std::string json_text(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

}  // namespace report

std::string JsonWriter::begin() {
  return "{\"sealworthy\": " + json_text(Json(version())) + ",\n \"recipes\": [";
}

std::string JsonWriter::next() {
  const bool first = std::exchange(first_, false);
  return first ? "\n  " : ",\n  ";
}

std::string JsonWriter::recipe(const RecipeReport& report) {
  return next() + json_text(report::json_of(report));
}

std::string NdjsonWriter::recipe(const RecipeReport& report) {
  return json_text(report::json_of(report)) + "\n";
}

std::string JsonWriter::end(const Summary& summary) {
  Json json{{"recipes", summary.recipes}};
  for (const auto v : {Verdict::tested, Verdict::hazard, Verdict::unproven, Verdict::unreadable})
    json[std::string(to_string(v))] = summary.count(v);
  for (const auto s : {Severity::danger, Severity::warning, Severity::caution, Severity::notice})
    json[std::string(to_string(s))] = summary.count(s);
  json["accepted"] = summary.accepted;
  json["skipped"] = summary.skipped;
  if (summary.known > 0) json["known"] = summary.known;
  return std::string(first_ ? "" : "\n ") + "],\n \"summary\": " + json_text(json) + "}\n";
}

}  // namespace sealworthy
