#include <fmt/format.h>

#include <algorithm>
#include <sealworthy/baseline.hpp>
#include <sealworthy/formats.hpp>
#include <tuple>
#include <utility>

#include "report/json_parts.hpp"
#include "report/places.hpp"

namespace sealworthy {
namespace {

using report::Json;

constexpr int form = 1;
constexpr std::string_view form_key = "sealworthy-baseline";
constexpr std::string_view write_anew = "write it anew with --write-baseline";

bool may_be_known(const RecipeReport& report, const Finding& finding) {
  return finding.severity != Severity::danger && report.verdict != Verdict::unreadable;
}

InputError wrong(std::string path, std::string message) {
  return {std::move(path), {}, std::move(message), std::string(write_anew)};
}

/// The text under a key; nullopt where there is none.
std::optional<std::string> field(const Json& entry, const char* key) {
  const auto it = entry.find(key);
  if (it == entry.end() || !it->is_string()) return std::nullopt;
  return it->get<std::string>();
}

}  // namespace

std::variant<Baseline, InputError> Baseline::read(std::string path, std::string_view text) {
  const auto json = Json::parse(text, nullptr, false);
  if (json.is_discarded() || !json.is_object() || !json.contains(form_key))
    return wrong(std::move(path), "this is no baseline of sealworthy");
  const auto& written = json.at(std::string(form_key));
  if (!written.is_number_integer() || written.get<std::int64_t>() != form)
    return wrong(std::move(path),
                 fmt::format("this baseline has the form {} of another version; this one reads form {}",
                             written.dump(), form));
  const auto list = json.find("findings");
  if (list == json.end() || !list->is_array())
    return wrong(std::move(path), "this baseline has no list of findings");
  Baseline baseline;
  std::size_t number = 0;
  for (const auto& item : *list) {
    ++number;
    const auto fingerprint = item.is_object() ? field(item, "fingerprint") : std::nullopt;
    const auto rule = item.is_object() ? field(item, "rule") : std::nullopt;
    const auto count = item.is_object() ? item.value("count", Json(1)) : Json();
    if (!fingerprint || !rule || !count.is_number_unsigned() || count.get<std::uint64_t>() < 1)
      return wrong(std::move(path),
                   fmt::format("entry {} of this baseline has no fingerprint, rule or count", number));
    baseline.entries_[*fingerprint] = {*rule, field(item, "path").value_or(""),
                                       field(item, "title").value_or(""), field(item, "line").value_or(""),
                                       static_cast<std::size_t>(count.get<std::uint64_t>())};
  }
  return baseline;
}

void Baseline::mark(RecipeReport& report) {
  marked_paths_.insert(report.path);
  for (auto& finding : report.findings) {
    if (!may_be_known(report, finding) || !finding.counts()) continue;
    const auto print = fingerprint(report, finding);
    const auto it = entries_.find(print);
    if (it == entries_.end()) continue;
    auto& met = met_[print];
    finding.known = met < it->second.count;
    if (finding.known) ++met;
  }
}

void Baseline::add(RecipeReport& report) {
  for (auto& finding : report.findings) {
    if (!may_be_known(report, finding) || !finding.accepted_because.empty()) continue;
    finding.known = true;
    const auto print = fingerprint(report, finding);
    const auto it = entries_.find(print);
    if (it != entries_.end()) {
      ++it->second.count;
      continue;
    }
    entries_[print] = {finding.rule, report.path, report.title, std::string(report::line_of(report, finding)),
                       1};
  }
}

std::vector<Baseline::Entry> Baseline::stale(const std::set<std::string>& gone_paths) const {
  std::vector<Entry> out;
  for (const auto& [print, entry] : entries_) {
    const auto it = met_.find(print);
    const auto met = it == met_.end() ? 0 : it->second;
    if (met >= entry.count) continue;
    if (!marked_paths_.contains(entry.path) && !gone_paths.contains(entry.path)) continue;
    out.push_back(entry);
    out.back().count = entry.count - met;
  }
  std::stable_sort(out.begin(), out.end(), [](const Entry& a, const Entry& b) {
    return std::tie(a.path, a.rule) < std::tie(b.path, b.rule);
  });
  return out;
}

std::set<std::string> Baseline::paths() const {
  std::set<std::string> out;
  for (const auto& [print, entry] : entries_) out.insert(entry.path);
  return out;
}

std::string Baseline::text() const {
  std::vector<std::pair<std::string, const Entry*>> sorted;
  for (const auto& [print, entry] : entries_) sorted.emplace_back(print, &entry);
  std::stable_sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) {
    return std::tie(a.second->path, a.second->rule) < std::tie(b.second->path, b.second->rule);
  });
  std::string out =
      fmt::format("{{\"{}\": {},\n \"written_by\": \"{}\",\n \"findings\": [", form_key, form, version());
  bool first = true;
  for (const auto& [print, entry] : sorted) {
    const Json json{{"fingerprint", print},  {"rule", entry->rule}, {"path", entry->path},
                    {"title", entry->title}, {"line", entry->line}, {"count", entry->count}};
    out += (first ? "\n  " : ",\n  ") + report::json_text(json);
    first = false;
  }
  return out + (first ? "]}\n" : "\n ]}\n");
}

}  // namespace sealworthy
