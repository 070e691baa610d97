#include <algorithm>
#include <array>
#include <cmath>
#include <sealworthy/lookup.hpp>
#include <sealworthy/science.hpp>

#include "knowledge/knowledge.hpp"
#include "quantity/figures.hpp"
#include "recipe/kitchen.hpp"
#include "tested/find_words.hpp"
#include "tested/lookup_words.hpp"

namespace sealworthy {
namespace {

using tested::Needed;
using tested::Product;
using tested::Row;
using tested::TableMethod;

constexpr std::array table_methods{TableMethod::boiling_water, TableMethod::pressure_dial,
                                   TableMethod::pressure_weighted};

/// Whether a product may be processed in an atmospheric steam canner at all.
bool steam_class(const Product& product, const tested::SteamRule& rule) {
  return std::find(rule.classes.begin(), rule.classes.end(), product.acid_class) != rule.classes.end();
}

class Lookup {
 public:
  Lookup(const tested::LookupRules& rules, const tested::LookupWords& asked, LookupResult& result)
      : rules_(rules), tables_(rules.tables), asked_(asked), result_(result) {}

  void add(const Product& product) {
    result_.products.push_back(tested::describe(product));
    if (product.kept_cold || product.no_tested_process) {
      leave_out(product.no_tested_process
                    ? "No tested process: " + product.why_no_process
                    : "Kept in the refrigerator: no process for the shelf is published.");
      return;
    }
    if (const auto form = not_covered(product); !form.empty()) {
      leave_out("This process does not cover \"" + form + "\".");
      return;
    }
    const auto before = result_.answers.size();
    for (const auto method : table_methods)
      if (asked_.allows(method)) add_method(product, method);
    if (result_.answers.size() == before && result_.products.back().left_out.empty())
      leave_out(nothing_fits());
  }

 private:
  /// A form that the words say and the product does not cover; an id or a title says what it covers.
  [[nodiscard]] std::string not_covered(const Product& product) const {
    if (asked_.words == product.id || asked_.words == product.title) return {};
    std::string form(rules_.match_index.not_covered(product, asked_.words));
    std::replace(form.begin(), form.end(), '-', ' ');
    return form;
  }

  void leave_out(std::string why) {
    auto& left_out = result_.products.back().left_out;
    if (std::find(left_out.begin(), left_out.end(), why) == left_out.end())
      left_out.push_back(std::move(why));
  }

  /// Every row of the method, in the order printed, as far as jar and pack are wanted.
  void add_method(const Product& product, TableMethod method) {
    if (!asked_.jar) {
      for (const auto& row : product.rows)
        if (row.method == method)
          for (const auto& option : row.options)
            add_option(product, {&row, &option, nullptr, false}, row.jar);
      return;
    }
    for (const auto& needed :
         tables_.needed(product, method, asked_.pack, *asked_.jar, tables_.highest_open()))
      add_option(product, needed, *asked_.jar);
  }

  void add_option(const Product& product, const Needed& needed, tested::JarIndex jar) {
    for (const auto& pack : packs(*needed.row))
      if (!asked_.altitude)
        for (const auto& step : needed.option->steps) add_step(product, needed, step, jar, pack);
      else if (const auto* step =
                   *asked_.altitude <= tables_.highest_open() ? needed.option->at(*asked_.altitude) : nullptr)
        add_step(product, needed, *step, jar, pack);
      else
        leave_out(too_high(needed));
  }

  [[nodiscard]] std::vector<std::string> packs(const Row& row) const {
    if (!row.hot && !row.raw) return {""};
    std::vector<std::string> packs;
    if (row.hot && asked_.pack != recipe::Pack::raw) packs.emplace_back("hot");
    if (row.raw && asked_.pack != recipe::Pack::hot) packs.emplace_back("raw");
    return packs;
  }

  void add_step(const Product& product, const Needed& needed, const tested::Option::Step& step,
                tested::JarIndex jar, const std::string& pack) {
    if (step.not_recommended) {
      leave_out(ruled_out(needed, step));
      return;
    }
    const auto& steam = tables_.steam();
    const bool steam_ok = needed.row->method == TableMethod::boiling_water && steam_class(product, steam) &&
                          step.time <= steam.longest;
    if (asked_.only_steam && !steam_ok) {
      leave_out("An atmospheric steam canner is for at most " + quantity::words(steam.longest) +
                ", altitude included.");
      return;
    }
    const auto& row = *needed.row;
    LookupAnswer answer;
    answer.id = product.id;
    answer.title = product.title;
    answer.applies_to = row.applies_to;
    answer.method = to_string(row.method);
    answer.pack = pack;
    answer.jar = jar_id(jar);
    answer.row_jar = jar_id(row.jar);
    answer.band = {step.band.from, step.band.to};
    answer.minutes = static_cast<int>(std::lround(in_minutes(step.time)));
    if (step.pressure) answer.psi = static_cast<int>(std::lround(in_psi(*step.pressure)));
    tested::set_headspace(product, pack, row.jar, answer);
    answer.acid_per_jar = tested::acid_words(product, tables_, rules_.catalogue, jar);
    answer.source = row.source;
    answer.read = step.read;
    answer.steam = steam_ok;
    answer.notes = notes(product, needed, step, jar);
    result_.answers.push_back(std::move(answer));
  }

  [[nodiscard]] std::vector<std::string> notes(const Product& product, const Needed& needed,
                                               const tested::Option::Step& step, tested::JarIndex jar) const {
    std::vector<std::string> notes;
    if (needed.row->jar != jar)
      notes.push_back("No row of its own: " + size(jar).plural + " take the time of " +
                      size(needed.row->jar).plural + ".");
    if (!product.jar_kind.empty()) notes.push_back("Only in " + product.jar_kind + " jars.");
    if (!product.canner.empty()) notes.push_back("Only in a canner of " + product.canner + ".");
    if (step.read == Read::memory) notes.emplace_back("This figure rests on memory; nobody saw the page.");
    if (step.time < product.sterile_jars_under)
      notes.push_back("Boil the empty jars first: the process is under " +
                      quantity::words(product.sterile_jars_under) + ".");
    if (const auto* advice =
            asked_.altitude ? tables_.advice(*needed.option, needed.row->method, *asked_.altitude) : nullptr;
        advice != nullptr && advice->added > Duration{})
      notes.push_back(advice->body + " prints " + quantity::words(advice->added) + " more " +
                      tested::band_words(advice->band) + ".");
    return notes;
  }

  /// "10 minutes at 15 psi on a weighted gauge is not recommended above 1,000 ft."
  [[nodiscard]] static std::string ruled_out(const Needed& needed, const tested::Option::Step& step) {
    const auto& lowest = needed.option->steps.front();
    auto why = quantity::words(step.time);
    if (lowest.pressure) why += " at " + quantity::words(*lowest.pressure);
    return why + " on a " + tested::gauge_name(needed.row->method) + " is not recommended " +
           tested::band_words(step.band) + ".";
  }

  [[nodiscard]] std::string too_high(const Needed& needed) const {
    const auto& highest = needed.option->steps.back().band;
    const auto end = std::min(highest.to, tables_.highest_open());
    std::string why = "No row is published above " + quantity::words(end) + " for a " +
                      tested::gauge_name(needed.row->method) + ".";
    const auto* advice = tables_.advice(*needed.option, needed.row->method, *asked_.altitude);
    if (advice == nullptr) return why;
    if (advice->pressure)
      return why + " " + advice->body + " prints " + quantity::words(*advice->pressure) + ".";
    return why;
  }

  [[nodiscard]] std::string nothing_fits() const {
    std::string asked;
    if (asked_.pack) asked += *asked_.pack == recipe::Pack::hot ? " hot-packed" : " raw-packed";
    if (asked_.jar)
      asked += " " + size(*asked_.jar).plural;
    else if (asked_.pack)
      asked += " jars";
    if (!asked_.method_name.empty()) asked += (asked.empty() ? " " : " in ") + asked_.method_name;
    return "No row is published for" + (asked.empty() ? std::string(" this") : asked) + ".";
  }

  [[nodiscard]] const tested::JarSize& size(tested::JarIndex jar) const {
    return tables_.jars()[static_cast<std::size_t>(jar)];
  }
  [[nodiscard]] std::string jar_id(tested::JarIndex jar) const { return size(jar).id; }

  const tested::LookupRules& rules_;
  const tested::Tables& tables_;
  const tested::LookupWords& asked_;
  LookupResult& result_;
};

/// What the altitude makes of the figures; nothing is decided by it.
void add_temperatures(LookupResult& result) {
  if (!result.altitude) return;
  const Altitude at = *result.altitude;
  result.boiling_point = science::value_of(science::boiling_point(at));
  for (LookupAnswer& answer : result.answers) {
    answer.temperature = answer.psi
                             ? science::value_of(science::canner_temperature({psi_gauge(*answer.psi), at}))
                             : result.boiling_point;
  }
}

}  // namespace

std::variant<LookupResult, InputError> tested::lookup(const LookupRules& rules, const LookupQuery& query) {
  const auto read = read_query(query, rules);
  if (const auto* error = std::get_if<InputError>(&read)) return *error;
  const auto& asked = std::get<LookupWords>(read);
  const auto found = find_by_words(rules.tables, rules.catalogue, asked.words);
  if (found.products.empty())
    return InputError{"",
                      {},
                      "no tested process is known for '" + asked.words + "'",
                      "name a food or a product: \"green beans\", \"crushed tomatoes\", \"strawberry jam\""};
  LookupResult result;
  result.altitude = asked.altitude;
  result.corrected = found.corrected;
  result.not_understood = found.not_understood;
  Lookup lookup(rules, asked, result);
  for (const auto* product : found.products) lookup.add(*product);
  const auto answered = [&](const LookupProduct& product) {
    return std::any_of(result.answers.begin(), result.answers.end(),
                       [&](const LookupAnswer& answer) { return answer.id == product.id; });
  };
  add_temperatures(result);
  std::stable_partition(result.products.begin(), result.products.end(), answered);
  return result;
}

std::variant<LookupResult, InputError> lookup(const Checker& checker, const LookupQuery& query) {
  const auto& knowledge = checker.knowledge();
  return tested::lookup({knowledge.catalogue, knowledge.tables, knowledge.methods, knowledge.match_index},
                        query);
}

}  // namespace sealworthy
