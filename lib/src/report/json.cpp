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
using report::JsonList;
using report::JsonObject;

void write(JsonObject json, const Finding& finding) {
  json.add("rule", finding.rule);
  json.add("severity", to_string(finding.severity));
  json.add("topic", to_string(finding.topic));
  json.add("line", finding.at.line);
  json.add("column", finding.at.column);
  json.add("message", finding.message);
  json.add("why", finding.why);
  json.add("instead", finding.instead);
  json.add("sources", finding.sources);
  json.add_told("meaning", finding.meaning);
  json.add_told("found", finding.found);
  json.add_told("needed", finding.needed);
  if (finding.from_kitchen) json.add("from", "kitchen");
  json.add_told("accepted", finding.accepted_because);
  if (finding.accepted_because.empty()) json.add_told("accepted_until", finding.accepted_until);
  if (finding.known) json.add("known", true);
}

void write(JsonObject json, const Point& point) {
  json.add("point", to_string(point.kind));
  json.add("state", to_string(point.state));
  json.add_told("found", point.found);
  json.add_told("needed", point.needed);
}

void write(JsonObject json, const Matched& matched) {
  if (matched.id.empty()) {
    json.add_value("id", nullptr);
    return;
  }
  json.add("id", matched.id);
  json.add("by", matched.by);
  json.add("title", matched.title);
  json.add("source", matched.source);
  json.add_told("holds_for", matched.holds_for);
  if (matched.from_memory) json.add("from_memory", true);
}

void write(JsonObject json, const ComparedLine& line) {
  json.add("mark", to_string(line.mark));
  json.add("card", line.card);
  json.add("published", line.published);
  json.add_told("note", line.note);
  if (line.percent) json.add_value("percent", *line.percent);
  if (line.at.line > 0) json.add("line", line.at.line);
}

void write(JsonObject json, const TableStep& step) {
  json.add_value("from_ft", step.from_ft);
  if (std::isfinite(step.to_ft)) json.add_value("to_ft", step.to_ft);
  json.add_value("minutes", step.minutes);
  if (step.psi) json.add_value("psi", *step.psi);
}

void write(JsonObject json, const TableUse& use);

template <class T>
void write_list(JsonList list, const std::vector<T>& items) {
  for (const auto& item : items) write(list.object(), item);
}

void write(JsonObject json, const TableUse& use) {
  json.add("jar", use.jar);
  json.add("method", use.method);
  if (use.minutes) json.add_value("minutes", *use.minutes);
  if (use.psi) json.add_value("psi", *use.psi);
  json.add_value("judged_at_ft", use.judged_at_ft);
  write_list(json.list("steps"), use.steps);
}

void write(JsonObject json, const Comparison& comparison) {
  json.add("id", comparison.id);
  json.add("title", comparison.title);
  json.add_value("batches", comparison.factor);
  write_list(json.list("lines"), comparison.lines);
}

/// A recipe as `recipes` of `check --format json` holds it.
void write(JsonObject json, const RecipeReport& report) {
  json.add("path", report.path);
  json.add("document", report.document);
  json.add("title", report.title);
  json.add("verdict", to_string(report.verdict));
  write(json.object("matched"), report.matched);
  write_list(json.list("findings"), report.findings);
  if (report.verdict == Verdict::tested) json.add("assumed", report.assumed);
  write_list(json.list("points"), report.points);
  if (report.compared) write(json.object("compared"), *report.compared);
  json.add_told("kitchen", report.kitchen);
  if (!report.tables.empty()) write_list(json.list("tables"), report.tables);
  if (report.study) json.add_value("science", report::science_json(*report.study));
}

}  // namespace

std::string JsonWriter::begin() {
  return "{\"sealworthy\": " + json_text(Json(version())) + ",\n \"recipes\": [";
}

std::string JsonWriter::next() {
  const bool first = std::exchange(first_, false);
  return first ? "\n  " : ",\n  ";
}

std::string JsonWriter::recipe(const RecipeReport& report) {
  auto text = next();
  write(JsonObject(text), report);
  return text;
}

std::string NdjsonWriter::recipe(const RecipeReport& report) {
  std::string text;
  write(JsonObject(text), report);
  text += '\n';
  return text;
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
