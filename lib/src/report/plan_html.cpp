#include <fmt/format.h>

#include <sealworthy/plan.hpp>

#include "quantity/figures.hpp"
#include "report/cautions.hpp"
#include "report/markup.hpp"
#include "report/page/files.hpp"
#include "report/plan_words.hpp"

namespace sealworthy {
namespace {

using report::escaped;

std::string figure(std::string_view name, std::string_view value) {
  return value.empty() ? std::string()
                       : fmt::format("<li>{} <strong>{}</strong></li>\n", escaped(name), escaped(value));
}

std::string figures(const PlannedCard& card) {
  std::string out = "<ul class=\"figures\" aria-label=\"Figures\">\n";
  out += figure("process", quantity::kitchen_number(card.minutes) + " min");
  if (card.psi)
    out += figure(card.gauge.empty() ? "pressure" : card.gauge + " gauge",
                  quantity::kitchen_number(*card.psi) + " psi");
  else
    out += figure("method", card.method == "steam" ? "full steam" : "boiling water");
  out += figure("jars", report::jars_words(card, card.jars));
  out += figure("headspace", card.headspace);
  return out + "</ul>\n";
}

/// The load that the card's jars go into first.
const PlanLoad* first_load(const Plan& plan, std::size_t card) {
  for (const auto& load : plan.loads)
    for (const auto& jars : load.jars)
      if (jars.card == card) return &load;
  return nullptr;
}

std::string in_order(const Plan& plan, std::size_t index) {
  const auto& card = plan.cards[index];
  std::string out = "<h2>In order</h2>\n<ol>\n";
  for (const auto& step : card.steps) out += "<li>" + escaped(step) + "</li>\n";
  if (!card.headspace.empty())
    out += "<li>Leave <strong>" + escaped(card.headspace) +
           "</strong> of headspace, wipe the rims, put on new lids.</li>\n";
  if (const auto* load = first_load(plan, index))
    for (const auto& phase : load->phases)
      out += phase.process
                 ? fmt::format("<li><strong>{}</strong></li>\n", escaped(phase.does))
                 : fmt::format("<li>{} <span class=\"time\">({})</span></li>\n", escaped(phase.does),
                               report::span_words(phase.shortest, phase.longest));
  return out + "<li>Let the jars cool 12 to 24 hours, test the seals, write the date on them.</li>\n</ol>\n";
}

std::string amounts(const PlannedCard& card) {
  std::string out = fmt::format("<h2>{}</h2>\n<ul class=\"amounts\">\n",
                                card.batches > 1 ? "Amounts, for each batch" : "Amounts");
  for (const auto& line : card.lines)
    out += line.in_all.empty() ? "<li>" + escaped(line.text) + "</li>\n"
                               : fmt::format("<li>each jar: <strong>{}</strong> ({} in all)</li>\n",
                                             escaped(line.text), escaped(line.in_all));
  return out + "</ul>\n";
}

std::string loads(const Plan& plan, std::size_t card) {
  std::string out;
  for (std::size_t i = 0; i < plan.loads.size(); ++i)
    for (const auto& jars : plan.loads[i].jars)
      if (jars.card == card)
        out += fmt::format("{}load {}: {}", out.empty() ? "" : "; ", i + 1,
                           report::jars_words(plan.cards[card], jars.count));
  return "<p>" + escaped(out) + ".</p>\n";
}

std::string cautions(const Plan& plan, const PlannedCard& card) {
  std::string out = "<div class=\"cautions\">\n<h2>Cautions</h2>\n<ul>\n";
  for (const auto& reminder : plan.reminders) out += "<li>" + escaped(reminder) + "</li>\n";
  for (const auto& note : card.notes) out += "<li>" + escaped(note) + "</li>\n";
  for (const auto& caution : report::cautions()) out += "<li>" + escaped(caution.text) + "</li>\n";
  return out + "</ul>\n<p>" + escaped(report::what_it_is()) + "</p>\n</div>\n";
}

constexpr std::string_view blanks =
    "<div class=\"write\"><span>Date</span><span class=\"blank\"></span><span>Batch</span><span "
    "class=\"blank\"></span><span>Process began</span><span class=\"blank\"></span><span>ended</span><span "
    "class=\"blank\"></span></div>\n";

std::string sheet(const Plan& plan, std::size_t index) {
  const auto& card = plan.cards[index];
  std::string out = fmt::format("<section class=\"sheet\" aria-labelledby=\"title-{}\">\n", index);
  out += fmt::format("<h1 id=\"title-{}\">{}</h1>\n", index, escaped(card.title));
  const std::string where = plan.altitude.empty() ? card.holds_for : plan.altitude;
  out += fmt::format("<p>{}. Follows {}.</p>\n",
                     escaped(where.empty() ? "For the altitude of the card" : "At " + where),
                     escaped(card.source));
  return out + figures(card) + loads(plan, index) + amounts(card) + in_order(plan, index) +
         std::string(blanks) + cautions(plan, card) + "</section>\n";
}

}  // namespace

std::string plan_html(const Plan& plan) {
  std::string sheets;
  for (std::size_t i = 0; i < plan.cards.size(); ++i) sheets += sheet(plan, i);
  const std::string title = plan.cards.size() == 1 ? plan.cards.front().title : std::string("Canning day");
  return report::filled(report::page::sheet_html, {{"TITLE", escaped(title)},
                                                   {"STYLE", std::string(report::page::style_css) +
                                                                 std::string(report::page::sheet_css)},
                                                   {"SHEETS", sheets}});
}

}  // namespace sealworthy
