#include "plan/planning.hpp"

#include <array>
#include <utility>

#include "checks/fields.hpp"
#include "quantity/amount.hpp"
#include "tested/sizes.hpp"

namespace sealworthy::plan {
namespace {

using checks::Fields;
using reading::MethodKind;

const std::vector<std::string_view> method_words{"boiling-water", "steam", "pressure"};
constexpr std::array methods{MethodKind::boiling_water, MethodKind::steam, MethodKind::pressure};
const std::vector<std::string_view> phase_words{"before", "after"};
const std::vector<std::string_view> class_words{"acid", "acidified", "low-acid", "fermented",
                                                "sugar-preserve"};

std::string cited(Fields& fields, const knowledge::Sources& sources) {
  std::string source = tested::read_source(fields.find("source"), sources, fields.sink());
  if (source.empty()) fields.sink().add(fields.at(), "'source' is missing");
  if (tested::read_mark(fields, Read::reprint) == Read::memory) source += " (from memory)";
  return source;
}

Interval<double> minutes_of(Fields& fields) {
  const std::string text = fields.text("minutes", true);
  const auto read = quantity::read_time(text);
  if (const auto* error = std::get_if<quantity::FigureError>(&read)) {
    fields.sink().add(fields.at(), "minutes: " + error->message, error->suggestion);
    return {0, 0};
  }
  const auto& time = std::get<Interval<Duration>>(read);
  return {in_minutes(time.low), in_minutes(time.high)};
}

MethodKind method_of(Fields& fields) {
  const auto method = fields.choice("method", method_words, true);
  return methods[method.value_or(0)];
}

void load_loads(const yaml::Node& node, Planning& planning, const knowledge::Sources& sources,
                checks::ErrorSink sink) {
  Fields fields(node, "loads", sink);
  cited(fields, sources);
  if (const auto* jars = fields.find("jars")) {
    Fields sizes(*jars, "jars", sink);
    for (const auto& entry : jars->entries) {
      const auto count = sizes.number(entry.key);
      if (!count || *count < 1)
        sink.add(entry.value.at, "a load is one jar or more");
      else
        planning.loads[std::string(entry.key)] = static_cast<int>(*count);
    }
    sizes.done();
  }
  fields.done();
}

void load_syrups(const yaml::Node& node, Planning& planning, const knowledge::Sources& sources,
                 checks::ErrorSink sink) {
  Fields fields(node, "syrups", sink);
  planning.syrup_word = fields.text("word", true);
  planning.syrup_source = cited(fields, sources);
  if (const auto* rows = fields.find("rows"))
    for (const auto& item : rows->items) {
      Fields one(item, "syrup", sink);
      Syrup syrup;
      syrup.name = one.text("kind", true);
      syrup.jar = one.text("jar", true);
      syrup.jars = static_cast<int>(one.number("jars").value_or(0));
      syrup.water = one.number("water-cups").value_or(0);
      syrup.sugar = one.number("sugar-cups").value_or(0);
      one.done();
      if (syrup.jars < 1 || syrup.water <= 0 || syrup.sugar <= 0)
        sink.add(item.at, "a syrup has 'jars', 'water-cups' and 'sugar-cups', all above 0");
      else
        planning.syrups.push_back(std::move(syrup));
    }
  fields.done();
}

}  // namespace

void Planning::load(std::string_view file, const yaml::Document& document, const knowledge::Sources& sources,
                    std::vector<foods::LoadError>& errors) {
  const checks::ErrorSink sink{file, errors};
  Fields root(document.root(), "planning", sink);
  root.find("about");
  const yaml::Node* node = root.find("planning");
  root.done();
  if (node == nullptr) return;
  Fields fields(*node, "planning", sink);
  if (const auto* all = fields.find("loads")) load_loads(*all, *this, sources, sink);
  if (const auto* list = fields.find("phases")) {
    for (const auto& item : list->items) {
      Fields one(item, "phase", sink);
      Phase phase;
      phase.method = method_of(one);
      phase.before = one.choice("phase", phase_words, true).value_or(0) == 0;
      phase.minutes = minutes_of(one);
      phase.does = one.text("does", true);
      phase.source = cited(one, sources);
      one.done();
      phases.push_back(std::move(phase));
    }
  }
  if (const auto* change = fields.find("change-over")) {
    Fields one(*change, "change-over", sink);
    change_over = minutes_of(one).high;
    change_over_does = one.text("does", true);
    cited(one, sources);
    one.done();
  }
  if (const auto* whole = fields.find("whole-batches")) {
    Fields one(*whole, "whole-batches", sink);
    const unsigned classes = one.choices("classes", class_words);
    for (std::size_t i = 0; i < class_words.size(); ++i)
      if (((classes >> i) & 1U) != 0) whole_batches.push_back(static_cast<tested::ProductClass>(i));
    whole_batches_why = one.text("why", true);
    cited(one, sources);
    one.done();
  }
  if (const auto* list = fields.find("reminders")) {
    for (const auto& item : list->items) {
      Fields one(item, "reminder", sink);
      const auto method = method_of(one);
      reminders.emplace_back(method, one.text("says", true));
      cited(one, sources);
      one.done();
    }
  }
  if (const auto* all = fields.find("syrups")) load_syrups(*all, *this, sources, sink);
  fields.done();
}

}  // namespace sealworthy::plan
