#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <sealworthy/merge.hpp>

#include "report/json_parts.hpp"

namespace sealworthy {
namespace {

using report::Json;

/// The enumerator that is written with this word.
template <class Enum, std::size_t N>
std::optional<Enum> word(const Json& object, const char* key, const std::array<Enum, N>& all) {
  const auto it = object.find(key);
  if (it == object.end() || !it->is_string()) return std::nullopt;
  for (const auto value : all)
    if (to_string(value) == it->template get_ref<const std::string&>()) return value;
  return std::nullopt;
}

constexpr std::array severities{Severity::notice, Severity::caution, Severity::warning, Severity::danger};
constexpr std::array verdicts{Verdict::tested, Verdict::unproven, Verdict::hazard, Verdict::unreadable};

InputError wrong(const std::string& path, int line, std::string message) {
  return {path, {line, line > 0 ? 1 : 0}, std::move(message), "make this part again"};
}

/// The report that a recipe's JSON tells of, as far as counting goes.
std::optional<RecipeReport> counted(const Json& recipe) {
  if (!recipe.is_object()) return std::nullopt;
  const auto path = recipe.find("path");
  const auto document = recipe.find("document");
  const auto findings = recipe.find("findings");
  const auto verdict = word(recipe, "verdict", verdicts);
  if (path == recipe.end() || !path->is_string() || document == recipe.end() ||
      !document->is_number_unsigned() || !verdict || findings == recipe.end() || !findings->is_array())
    return std::nullopt;
  RecipeReport report;
  report.path = path->get<std::string>();
  report.document = document->get<int>();
  report.verdict = *verdict;
  for (const auto& item : *findings) {
    const auto severity = item.is_object() ? word(item, "severity", severities) : std::nullopt;
    if (!severity) return std::nullopt;
    Finding finding;
    finding.severity = *severity;
    finding.known = item.contains("known");
    if (item.contains("accepted")) finding.accepted_because = "yes";
    report.findings.push_back(std::move(finding));
  }
  return report;
}

}  // namespace

std::optional<InputError> Merger::add(const std::string& path, std::string_view text) {
  const auto take = [this, &path](const Json& recipe, int line) -> std::optional<InputError> {
    const auto report = counted(recipe);
    if (!report) return wrong(path, line, "this is no recipe of a report by `check`");
    Recipe entry{report::json_text(recipe), report->verdict, {}};
    for (const auto& finding : report->findings)
      if (finding.counts()) entry.worst = std::max(entry.worst.value_or(finding.severity), finding.severity);
    const auto [it, added] =
        recipes_.try_emplace({report->path, static_cast<std::size_t>(report->document)}, entry);
    if (added)
      summary_.add(*report);
    else if (it->second.text != entry.text)
      return wrong(
          path, line,
          fmt::format("recipe {} of {} is told otherwise in another part", report->document, report->path));
    return std::nullopt;
  };

  if (const auto whole = Json::parse(text, nullptr, false); whole.is_object() && whole.contains("recipes")) {
    const auto by = whole.value("sealworthy", Json());
    if (by != version())
      return wrong(path, 0,
                   fmt::format("this part was written by version {}, this is {}", by.dump(), version()));
    if (!whole.at("recipes").is_array()) return wrong(path, 0, "this is no report by `check`");
    for (const auto& recipe : whole.at("recipes"))
      if (auto error = take(recipe, 0)) return error;
    if (const auto total = whole.find("summary"); parts_.insert(std::hash<std::string_view>{}(text)).second &&
                                                  total != whole.end() && total->is_object())
      if (const auto skipped = total->find("skipped");
          skipped != total->end() && skipped->is_number_unsigned())
        summary_.skipped += skipped->get<std::size_t>();
    return std::nullopt;
  }
  int number = 0;
  while (!text.empty()) {
    ++number;
    const auto end = text.find('\n');
    const auto line = text.substr(0, end);
    if (end == std::string_view::npos) return wrong(path, number, "the last line of this part is cut off");
    text.remove_prefix(end + 1);
    if (line.find_first_not_of(" \t\r") == std::string_view::npos) continue;
    const auto recipe = Json::parse(line, nullptr, false);
    if (recipe.is_discarded()) return wrong(path, number, "this line is no JSON");
    if (auto error = take(recipe, number)) return error;
  }
  return std::nullopt;
}

std::string Merger::json() const {
  JsonWriter writer;
  auto out = writer.begin();
  for (const auto& [place, recipe] : recipes_) out += writer.next() + recipe.text;
  return out + writer.end(summary_);
}

std::string Merger::ndjson() const {
  std::string out;
  for (const auto& [place, recipe] : recipes_) out += recipe.text + "\n";
  return out;
}

bool Merger::fails(const FailPolicy& policy) const {
  return std::any_of(recipes_.begin(), recipes_.end(), [&policy](const auto& entry) {
    const Recipe& recipe = entry.second;
    return (policy.require_tested && recipe.verdict != Verdict::tested) ||
           (policy.at && recipe.worst && *recipe.worst >= *policy.at);
  });
}

}  // namespace sealworthy
