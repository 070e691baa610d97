#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <sealworthy/lookup_report.hpp>

#include "quantity/figures.hpp"
#include "report/cautions.hpp"
#include "report/wrap.hpp"

namespace sealworthy {
namespace {

using Json = nlohmann::ordered_json;
using report::wrap;

int clamped(const TextStyle& style) { return std::clamp(style.width, 40, 100); }

std::string_view method_words(std::string_view method) {
  if (method == "pressure-dial") return "pressure canner, dial gauge";
  if (method == "pressure-weighted") return "pressure canner, weighted gauge";
  return "boiling water";
}

std::string process_words(const LookupAnswer& answer) {
  auto words = fmt::format("{} minutes", answer.minutes);
  if (answer.psi) words += fmt::format(" at {} psi", *answer.psi);
  return words;
}

std::string boiling_words(const LookupResult& result) {
  if (!result.boiling_point) return {};
  return fmt::format(", where water boils at {:.1f} F", in_fahrenheit(*result.boiling_point));
}

/// To a tenth of a degree.
double rounded_f(Temperature temperature) { return std::round(in_fahrenheit(temperature) * 10) / 10; }

std::string pack_words(const LookupAnswer& answer) {
  return answer.pack.empty() ? std::string("any pack") : answer.pack + " pack";
}

std::string row(const LookupAnswer& answer, const TextStyle& style) {
  auto altitude = quantity::words(answer.band);
  if (answer.psi && answer.temperature)
    altitude += fmt::format(", steam of {:.1f} F", in_fahrenheit(*answer.temperature));
  const auto line = fmt::format("    {:<9} {:<12} {:<22} {}", pack_words(answer), answer.jar,
                                process_words(answer), altitude);
  std::string out = wrap("", line.substr(0), 6, clamped(style));
  if (report::columns(line) <= clamped(style)) out = line + "\n";
  if (!answer.applies_to.empty()) out += wrap("      ", answer.applies_to, 6, clamped(style));
  return out;
}

std::string part(std::string_view name, const std::string& text, const TextStyle& style) {
  return text.empty() ? "" : wrap(fmt::format("  {:<11}", name), text, 13, clamped(style));
}

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
  return fmt::format("{}", fmt::join(parts, between));
}

/// What all answers of a product say alike is told once; where they differ, by jar.
template <class Get>
std::string alike(const std::vector<const LookupAnswer*>& answers, Get get) {
  std::vector<std::pair<std::string, std::vector<std::string>>> told;
  for (const auto* answer : answers) {
    const std::string text = get(*answer);
    if (text.empty()) continue;
    auto it = std::find_if(told.begin(), told.end(), [&](const auto& t) { return t.first == text; });
    if (it == told.end()) it = told.insert(told.end(), {text, {}});
    auto where = answer->jar + (answer->pack.empty() ? "" : ", " + answer->pack + " pack");
    if (std::find(it->second.begin(), it->second.end(), where) == it->second.end())
      it->second.push_back(where);
  }
  if (told.size() == 1) return told.front().first;
  std::vector<std::string> parts;
  parts.reserve(told.size());
  for (const auto& [text, where] : told)
    parts.push_back(fmt::format("{} ({})", text, fmt::join(where, "; ")));
  return joined(parts, "; ");
}

std::vector<std::string> notes_of(const LookupProduct& product,
                                  const std::vector<const LookupAnswer*>& answers) {
  std::vector<std::string> notes;
  const auto add = [&](const std::string& note) {
    if (std::find(notes.begin(), notes.end(), note) == notes.end()) notes.push_back(note);
  };
  for (const auto* answer : answers)
    for (const auto& note : answer->notes) add(note);
  for (const auto& note : product.left_out) add(note);
  for (const auto& note : product.notes) add(note);
  if (std::any_of(answers.begin(), answers.end(), [](const auto* a) { return a->steam; }))
    add("An atmospheric steam canner may be used for the boiling-water time.");
  return notes;
}

std::string product_text(const LookupProduct& product, const LookupResult& result, const TextStyle& style) {
  std::vector<const LookupAnswer*> answers;
  for (const auto& answer : result.answers)
    if (answer.id == product.id) answers.push_back(&answer);
  std::string out = wrap("", product.title, 2, clamped(style));
  out += part("follows", product.id, style);
  std::string_view method;
  for (const auto* answer : answers) {
    if (method != answer->method) out += fmt::format("  {}\n", method_words(answer->method));
    method = answer->method;
    out += row(*answer, style);
  }
  out += part("headspace", alike(answers, [](const LookupAnswer& a) { return a.headspace; }), style);
  out += part("each jar",
              alike(answers, [](const LookupAnswer& a) { return joined(a.acid_per_jar, ", or "); }), style);
  if (product.covering != "none") out += part("covered by", product.covering, style);
  out += part("prepare", joined(product.preparation, "; "), style);
  out += part("for a load", joined(product.canner_load, "; "), style);
  if (!product.formula.empty()) {
    out += part("formula", product.yields.empty() ? "for one batch" : "makes " + product.yields, style);
    for (const auto& line : product.formula) out += wrap("    - ", line, 6, clamped(style));
  }
  for (const auto& note : notes_of(product, answers)) out += part("note", note, style);
  const auto sources = alike(answers, [](const LookupAnswer& a) { return a.source; });
  out += part("source", sources.empty() ? product.source : sources, style);
  if (product.read == Read::memory) out += part("read", "from memory: nobody saw the page", style);
  return out;
}

Json of(const LookupAnswer& answer) {
  Json json{{"id", answer.id},
            {"title", answer.title},
            {"method", answer.method},
            {"pack", answer.pack.empty() ? "unspecified" : answer.pack},
            {"jar", answer.jar},
            {"minutes", answer.minutes},
            {"psi", answer.psi ? Json(*answer.psi) : Json(nullptr)},
            {"headspace_in", {answer.headspace_in.low, answer.headspace_in.high}},
            {"acid_per_jar", answer.acid_per_jar},
            {"source", answer.source},
            {"read", to_string(answer.read)}};
  const double top = in_feet(answer.band.high);
  json["band_ft"] = {std::round(in_feet(answer.band.low)),
                     std::isfinite(top) ? Json(std::round(top)) : Json(nullptr)};
  if (answer.temperature) json["temperature_f"] = rounded_f(*answer.temperature);
  if (answer.row_jar != answer.jar) json["row_jar"] = answer.row_jar;
  if (!answer.applies_to.empty()) json["applies_to"] = answer.applies_to;
  json["notes"] = answer.notes;
  return json;
}

}  // namespace

std::string lookup_text(const LookupResult& result, const TextStyle& style) {
  std::string out;
  if (!result.corrected.empty()) out += wrap("", "Taken for: " + result.corrected, 0, clamped(style)) + "\n";
  if (result.altitude)
    out += fmt::format("At {}{}:\n\n", quantity::words(*result.altitude), boiling_words(result));
  else
    out +=
        wrap("", "For every altitude; --altitude or a kitchen file narrows it to yours.", 0, clamped(style)) +
        "\n";
  constexpr std::size_t shown_whole = 4;  // best matches first; a page long enough to read
  const auto shown = std::min(result.products.size(), shown_whole);
  for (std::size_t i = 0; i < shown; ++i)
    out += (i == 0 ? "" : "\n") + product_text(result.products[i], result, style);
  if (shown < result.products.size()) out += "\nAlso named by these words; look them up by their id:\n";
  for (std::size_t i = shown; i < result.products.size(); ++i)
    out +=
        wrap("  ", fmt::format("{}: {}", result.products[i].id, result.products[i].title), 4, clamped(style));
  return out + "\n" + report::cautions_text(clamped(style));
}

std::string lookup_json(const LookupResult& result) {
  std::string out = "{\"altitude_ft\": ";
  out += result.altitude ? Json(std::round(in_feet(*result.altitude))).dump() : "null";
  if (result.boiling_point)
    out += ",\n \"boiling_point_f\": " + Json(rounded_f(*result.boiling_point)).dump();
  out += ",\n \"processes\": [";
  bool first = true;
  for (const auto& answer : result.answers) {
    out += (first ? "\n  " : ",\n  ") + of(answer).dump(-1, ' ', false, Json::error_handler_t::replace);
    first = false;
  }
  return out + (first ? "" : "\n ") + "]}\n";
}

}  // namespace sealworthy
