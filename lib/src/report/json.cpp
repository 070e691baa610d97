#include <nlohmann/json.hpp>
#include <sealworthy/report.hpp>

namespace sealworthy {
namespace {

using Json = nlohmann::ordered_json;

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
  if (!finding.found.empty()) json["found"] = finding.found;
  if (!finding.needed.empty()) json["needed"] = finding.needed;
  if (finding.from_kitchen) json["from"] = "kitchen";
  if (!finding.accepted_because.empty()) json["accepted"] = finding.accepted_because;
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
    if (line.at.line > 0) one["line"] = line.at.line;
    json["lines"].push_back(std::move(one));
  }
  return json;
}

/// Bytes that are no UTF-8 (a path may hold them) are replaced, so that the output is always valid JSON.
std::string text_of(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

}  // namespace

std::string JsonWriter::begin() {
  return "{\"sealworthy\": " + text_of(Json(version())) + ",\n \"recipes\": [";
}

std::string JsonWriter::recipe(const RecipeReport& report) {
  Json json{{"path", report.path},           {"document", report.document},
            {"title", report.title},         {"verdict", to_string(report.verdict)},
            {"matched", of(report.matched)}, {"findings", Json::array()}};
  for (const auto& finding : report.findings) json["findings"].push_back(of(finding));
  if (report.verdict == Verdict::tested) json["assumed"] = report.assumed;
  json["points"] = Json::array();
  for (const auto& point : report.points) json["points"].push_back(of(point));
  if (report.compared) json["compared"] = of(*report.compared);
  std::string text = first_ ? "\n  " : ",\n  ";
  first_ = false;
  return text += text_of(json);
}

std::string JsonWriter::end(const Summary& summary) {
  Json json{{"recipes", summary.recipes}};
  for (const auto v : {Verdict::tested, Verdict::hazard, Verdict::unproven, Verdict::unreadable})
    json[std::string(to_string(v))] = summary.count(v);
  for (const auto s : {Severity::danger, Severity::warning, Severity::caution, Severity::notice})
    json[std::string(to_string(s))] = summary.count(s);
  json["accepted"] = summary.accepted;
  return std::string(first_ ? "" : "\n ") + "],\n \"summary\": " + text_of(json) + "}\n";
}

}  // namespace sealworthy
