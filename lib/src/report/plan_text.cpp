#include <fmt/format.h>

#include <algorithm>
#include <sealworthy/plan.hpp>

#include "report/cautions.hpp"
#include "report/plan_words.hpp"
#include "report/wrap.hpp"

namespace sealworthy {
namespace {

using report::wrap;

constexpr int label_columns = 13;

int clamped(const TextStyle& style) { return std::clamp(style.width, 40, 100); }

/// Several texts under one label, each on lines of its own.
std::string part(std::string_view label, const std::vector<std::string>& texts, const TextStyle& style) {
  std::string out;
  for (const auto& text : texts) {
    out += wrap(fmt::format("  {:<{}}", out.empty() ? label : "", label_columns - 2), text, label_columns,
                clamped(style));
  }
  return out;
}

std::string bold(std::string_view text, const TextStyle& style) {
  return style.color ? fmt::format("\033[1m{}\033[0m", text) : std::string(text);
}

std::string card_text(const PlannedCard& card, const TextStyle& style) {
  const std::string jars = report::jars_words(card, card.jars);
  std::string out = bold(wrap("", card.title + ": " + jars, 2, clamped(style)), style);
  out += part("follows",
              {fmt::format("{} ({}){}", card.follows, card.source,
                           card.holds_for.empty() ? "" : ", at " + card.holds_for)},
              style);
  auto buy = card.buy;
  const bool told = card.jar.ends_with(" jar");
  buy.push_back(
      fmt::format("{} {} and as many new lids", card.jars, told ? card.jar + "s" : card.jar + " jars"));
  out += part("buy", buy, style);
  std::vector<std::string> lines;
  for (const auto& line : card.lines)
    lines.push_back(line.in_all.empty() ? line.text
                                        : fmt::format("each jar: {} ({} in all)", line.text, line.in_all));
  out += part(card.batches > 1 ? "each batch" : "amounts", lines, style);
  out += part("process", {report::process_words(card)}, style);
  if (!card.headspace.empty()) out += part("headspace", {card.headspace}, style);
  return out + part("note", card.notes, style);
}

/// True if two loads have the same phases but for what comes between loads.
bool same_phases(const PlanLoad& a, const PlanLoad& b) {
  const auto words = [](const PlanLoad& load) {
    std::vector<std::string> out;
    for (const auto& phase : load.phases) out.push_back(phase.does);
    std::reverse(out.begin(), out.end());  // a load but the first begins with the change-over
    return out;
  };
  const auto one = words(a);
  const auto two = words(b);
  const auto count = std::min(one.size(), two.size());
  return std::max(one.size(), two.size()) - count <= 1 &&
         std::equal(one.begin(), one.begin() + static_cast<std::ptrdiff_t>(count), two.begin());
}

std::string load_text(const Plan& plan, std::size_t i, const TextStyle& style) {
  const auto& load = plan.loads[i];
  std::string out =
      wrap("",
           fmt::format("Load {} of {}: {}, {}", i + 1, plan.loads.size(), report::load_words(plan, load),
                       report::span_words(load.shortest, load.longest)),
           2, clamped(style));
  if (i > 0 && same_phases(load, plan.loads[i - 1])) return out + "  as the load before\n";
  for (const auto& phase : load.phases)
    out += wrap(fmt::format("  {:>12}  ", report::span_words(phase.shortest, phase.longest)), phase.does, 16,
                clamped(style));
  return out;
}

}  // namespace

std::string plan_text(const Plan& plan, const TextStyle& style) {
  std::string out;
  if (!plan.altitude.empty()) out += "At " + plan.altitude + ":\n\n";
  for (const auto& card : plan.cards) out += card_text(card, style) + "\n";
  for (std::size_t i = 0; i < plan.loads.size(); ++i) out += load_text(plan, i, style);
  out += wrap(
      "",
      fmt::format("{} {}, one after the other: {} in all.", plan.loads.size(),
                  plan.loads.size() == 1 ? "load" : "loads", report::span_words(plan.shortest, plan.longest)),
      0, clamped(style));
  out += "\n" + part("remember", plan.reminders, style) + part("note", plan.notes, style);
  return out + "\n" + report::cautions_text(clamped(style));
}

}  // namespace sealworthy
