#include <fmt/format.h>
#include <utf8.h>

#include <algorithm>
#include <sealworthy/formats.hpp>

#include "knowledge/knowledge.hpp"
#include "report/json_parts.hpp"
#include "report/places.hpp"

namespace sealworthy {
namespace {

using report::Json;

std::string paragraphs(std::string_view says, std::string_view why, std::string_view instead,
                       std::string_view source, bool markdown) {
  const auto part = [markdown](std::string_view name, std::string_view text) {
    if (text.empty()) return std::string();
    const std::string_view stars = markdown ? "**" : "";
    return fmt::format("\n\n{0}{1}:{0} {2}", stars, name, text);
  };
  return std::string(says) + part("Why", why) + part("Instead", instead) + part("Source", source);
}

Json text_of(std::string text) { return Json{{"text", std::move(text)}}; }

/// The reportingDescriptor of a rule; `unreadable` is told by the readers and has no entry under rules/.
Json rule_of(const Checker& checker, const std::string& id, Severity severity) {
  const auto* rule = checker.knowledge().rule(id);
  if (rule == nullptr) {
    const std::string says = "The recipe could not be read, so nothing in it was checked.";
    return {{"id", id},
            {"shortDescription", text_of(says)},
            {"fullDescription", text_of(says)},
            {"help", text_of(says + " Mend the place that the message names.")},
            {"defaultConfiguration", {{"level", report::level_of(severity)}}},
            {"properties", {{"tags", Json::array({"card"})}}}};
  }
  return {{"id", id},
          {"shortDescription", text_of(rule->says)},
          {"fullDescription", text_of(rule->why.empty() ? rule->says : rule->why)},
          {"help",
           {{"text", paragraphs(rule->says, rule->why, rule->instead, rule->source, false)},
            {"markdown", paragraphs(rule->says, rule->why, rule->instead, rule->source, true)}}},
          {"defaultConfiguration", {{"level", report::level_of(rule->severity)}}},
          {"properties",
           {{"tags", Json::array({to_string(rule->topic)})}, {"severity", to_string(rule->severity)}}}};
}

/// From the finding's place to the end of its line, where the line is known.
Json region_of(const RecipeReport& report, const Finding& finding) {
  Json region{{"startLine", finding.at.line}, {"startColumn", std::max(1, finding.at.column)}};
  const auto line = report::valid_utf8(report::line_of(report, finding));
  if (line.empty()) return region;
  const auto columns = static_cast<int>(utf8::unchecked::distance(line.begin(), line.end()));
  if (finding.at.column <= columns) region["endColumn"] = columns + 1;
  region["snippet"] = text_of(line);
  return region;
}

Json location_of(const RecipeReport& report, const Finding& finding, std::string_view base) {
  const auto path = report::shown_path(report::file_of(report, finding), base);
  Json artifact{{"uri", report::uri_of(path)}};
  if (!path.starts_with('/')) artifact["uriBaseId"] = "CHECKED";
  Json physical{{"artifactLocation", std::move(artifact)}};
  if (finding.at.line > 0) physical["region"] = region_of(report, finding);
  return {{"physicalLocation", std::move(physical)},
          {"logicalLocations", Json::array({{{"name", report::name_of(report)}}})}};
}

Json suppressions_of(const Finding& finding) {
  Json list = Json::array();
  if (!finding.accepted_because.empty())
    list.push_back({{"kind", "inSource"}, {"justification", finding.accepted_because}});
  if (finding.known) list.push_back({{"kind", "external"}, {"justification", "Known from the baseline."}});
  return list;
}

Json properties_of(const RecipeReport& report, const Finding& finding) {
  Json properties{{"severity", to_string(finding.severity)},
                  {"topic", to_string(finding.topic)},
                  {"verdict", to_string(report.verdict)}};
  if (!finding.found.empty()) properties["found"] = finding.found;
  if (!finding.needed.empty()) properties["needed"] = finding.needed;
  if (!finding.sources.empty()) properties["sources"] = finding.sources;
  return properties;
}

}  // namespace

std::size_t SarifWriter::index_of(const Finding& finding) {
  const auto by_name = [this](std::size_t index, const std::string& name) { return rules_[index] < name; };
  const auto it = std::lower_bound(index_by_name_.begin(), index_by_name_.end(), finding.rule, by_name);
  if (it != index_by_name_.end() && rules_[*it] == finding.rule) return *it;
  const auto index = rules_.size();
  index_by_name_.insert(it, index);
  rules_.push_back(finding.rule);
  severities_.push_back(finding.severity);
  return index;
}

std::string SarifWriter::begin() {
  return "{\"$schema\": \"https://json.schemastore.org/sarif-2.1.0.json\",\n \"version\": \"2.1.0\",\n"
         " \"runs\": [{\"columnKind\": \"unicodeCodePoints\",\n"
         "  \"originalUriBaseIds\": {\"CHECKED\": {\"description\": {\"text\": \"The folder that sealworthy "
         "was "
         "run in.\"}}},\n"
         "  \"results\": [";
}

std::string SarifWriter::recipe(const RecipeReport& report) {
  std::string out;
  for (const auto& finding : report.findings) {
    auto text = finding.message;
    if (!finding.instead.empty()) text += " " + finding.instead;
    Json result{{"ruleId", finding.rule},
                {"ruleIndex", index_of(finding)},
                {"level", report::level_of(finding.severity)},
                {"message", text_of(std::move(text))},
                {"locations", Json::array({location_of(report, finding, base_)})},
                {"partialFingerprints", {{"sealworthy/v1", fingerprint(report, finding)}}}};
    if (auto suppressions = suppressions_of(finding); !suppressions.empty())
      result["suppressions"] = std::move(suppressions);
    result["properties"] = properties_of(report, finding);
    out += (first_ ? "\n   " : ",\n   ") + report::json_text(result);
    first_ = false;
  }
  return out;
}

std::string SarifWriter::end(const Summary& summary) {
  Json rules = Json::array();
  for (std::size_t i = 0; i < rules_.size(); ++i)
    rules.push_back(rule_of(checker_, rules_[i], severities_[i]));
  const Json tool{
      {"driver",
       {{"name", "Sealworthy"},
        {"version", version()},
        {"semanticVersion", version()},
        {"shortDescription", text_of("Compares home-canning recipes with published, tested processes.")},
        {"rules", std::move(rules)}}}};
  Json counts{{"recipes", summary.recipes}};
  for (const auto v : {Verdict::tested, Verdict::hazard, Verdict::unproven, Verdict::unreadable})
    counts[std::string(to_string(v))] = summary.count(v);
  const Json invocations = Json::array({{{"executionSuccessful", summary.count(Verdict::unreadable) == 0}}});
  return std::string(first_ ? "" : "\n  ") + "],\n  \"tool\": " + report::json_text(tool) +
         ",\n  \"invocations\": " + report::json_text(invocations) +
         ",\n  \"properties\": " + report::json_text(counts) + "}]}\n";
}

}  // namespace sealworthy
