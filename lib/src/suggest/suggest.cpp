#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <sealworthy/suggest.hpp>

#include "knowledge/knowledge.hpp"
#include "knowledge/recipes.hpp"
#include "plan/batch.hpp"
#include "plan/scale.hpp"
#include "quantity/figures.hpp"
#include "reading/build.hpp"
#include "reading/ingredients.hpp"
#include "recipe/write_card.hpp"
#include "suggest/card_text.hpp"
#include "suggest/card_writer.hpp"
#include "suggest/choose.hpp"
#include "tested/compare.hpp"
#include "tested/compare_amounts.hpp"
#include "tested/line_foods.hpp"

namespace sealworthy {
namespace {

using reading::Reading;
using suggest::CardFigures;

/// How a line is worded: as the card names the food of the formula, as the publication prints it, or by the
/// names of the catalogue.
enum class Words { card, printed, catalogue };

class Writer {
 public:
  Writer(const Checker& checker, const Reading& reading, const tested::Product& product,
         const suggest::Choice& choice, const RecipeReport& found, Words words, bool keep_neutral)
      : words_(words),
        keep_neutral_(keep_neutral),
        knowledge_(checker.knowledge()),
        reading_(reading),
        product_(product),
        height_(choice.height),
        jars_(choice.jars),
        figures_(choice.jars.front()),
        found_(found),
        writer_(knowledge_.tables, knowledge_.catalogue),
        used_(reading.ingredients.size(), false) {}

  std::string card() {
    const auto& recipe = *reading_.recipe;
    out_ = fmt::format("# {}\n# as {} prints it, at this card's size, jar and altitude.\n", product_.title,
                       product_.source);
    out_ += "# Each line that differs from the card says so. Check it before you can by it.\n";
    out_ += "recipe: " + recipe::yaml_scalar(recipe.title.value) + "\n";
    const bool followed = recipe.follows && recipe.follows->value == product_.id;
    out_ += "follows: " + product_.id +
            (followed ? "" : suggest::comment("the tested process nearest to the card")) + "\n";
    ingredients();
    packing();
    process();
    out_ += "steps:\n";
    for (const auto& step : writer_.steps(product_, figures_))
      out_ += "  - " + recipe::yaml_scalar(suggest::sentence(step)) + "\n";
    own_steps();
    return out_;
  }

 private:
  /// How many times the published batch the card makes; what is not to be made larger is made once.
  double scale() const {
    if (!product_.formula) return 1;
    const auto& whole = knowledge_.planning.whole_batches;
    if (std::find(whole.begin(), whole.end(), product_.acid_class) != whole.end()) return 1;
    const auto* compared = reading_.compared.get();
    const bool same_formula = compared != nullptr && !compared->lines.empty() &&
                              compared->lines.front().line == product_.formula->lines.data();
    if (same_formula && compared->factor != 1) return compared->factor;
    return plan::times_formula(reading_, *product_.formula).value_or(1);
  }

  void ingredients() {
    suggest::CardStyle style;
    style.scale = scale();
    style.acid_choice = acid_choice();
    for (const auto& jar : jars_) style.jars.push_back(jar.jar);
    if (std::abs(style.scale - 1) > 0.02)
      out_ += fmt::format("# The published amounts times {}.\n", quantity::kitchen_number(style.scale));
    out_ += "ingredients:\n";
    const bool own_foods = keep_own_foods();
    for (const auto& line : writer_.ingredients(product_, figures_, style)) {
      if (own_foods && !line.per_jar && !is_plain_water(line)) continue;
      std::string yaml = words_ == Words::catalogue ? line.yaml : printed(line, style.scale);
      const auto own = card_line(line.foods);
      std::string note = "added";
      if (own < used_.size()) {
        used_[own] = true;
        const auto& ingredient = reading_.ingredients[own];
        const std::string was(ingredient.line->text);
        if (words_ == Words::card && keeps(ingredient)) yaml = in_own_words(line, ingredient, style.scale);
        note = same(yaml, ingredient) ? std::string() : "the card has: " + was;
      }
      out_ += "  - " + yaml + (note.empty() || is_plain_water(line) ? "" : suggest::comment(note)) + "\n";
    }
    for (std::size_t i = 0; i < used_.size(); ++i)
      if (!used_[i]) leave_out(reading_.ingredients[i]);
  }

  /// A process without a formula takes the card's own foods where they are of those that it names. False
  /// where they are too few for a mixture, or none: then the process's own are written.
  bool keep_own_foods() {
    if (product_.formula || reading_.match.sure()) return false;
    std::vector<std::size_t> own;
    for (std::size_t i = 0; i < used_.size(); ++i)
      if (suggest::takes(product_, reading_.ingredients[i], knowledge_.catalogue)) own.push_back(i);
    if (own.empty() || static_cast<int>(own.size()) < product_.identity.at_least) return false;
    for (const auto i : own) {
      const auto& ingredient = reading_.ingredients[i];
      used_[i] = true;
      out_ += std::string("  - ") + (ingredient.line->per_jar ? "each jar: " : "") +
              recipe::yaml_scalar(ingredient.line->text) + "\n";
    }
    return true;
  }

  /// Salt, sugar, dry spice and water beside a single food may stay; whatever else the process does not name
  /// is left out.
  void leave_out(const reading::Ingredient& ingredient) {
    const bool stays = keep_neutral_ && !product_.formula && ingredient.food != nullptr &&
                       ingredient.food->acid_class == foods::AcidClass::neutral;
    if (stays) {
      const std::string each = ingredient.line->per_jar ? "each jar: " : "";
      out_ += "  - " + each + recipe::yaml_scalar(ingredient.line->text) + "\n";
    } else {
      out_ += suggest::comment("left out, the tested process does not name it: " +
                               std::string(ingredient.line->text)) +
              "\n";
    }
  }

  /// The line as the publication prints it.
  std::string printed(const suggest::CardLine& line, double times) const {
    if (line.formula == nullptr || line.formula->per_jar) return line.yaml;
    const std::string& text = line.formula->text;
    const auto read = knowledge_.catalogue.read_line(text, quantity::Units::us);
    return recipe::yaml_scalar(std::abs(times - 1) < 1e-9 ? text : plan::scaled_line(text, read, times));
  }

  /// The card's line with the published amount; without a formula the amount of the food is free.
  std::string in_own_words(const suggest::CardLine& line, const reading::Ingredient& ingredient,
                           double times) const {
    const std::string own(ingredient.line->text);
    const auto* formula = line.formula;
    if (!product_.formula && !ingredient.read.per_jar && !line.per_jar) return recipe::yaml_scalar(own);
    if (formula == nullptr || formula->per_jar || ingredient.read.per_jar) return line.yaml;
    const auto published = std::find_if(formula->amounts.begin(), formula->amounts.end(),
                                        [](const auto& amount) { return amount.stated_any(); });
    const auto& amount = ingredient.read.amount;
    if (published == formula->amounts.end()) return recipe::yaml_scalar(own);
    for (const auto& one : formula->amounts)
      for (const auto& printed : tested::sizes_of(one))
        for (const auto& size : tested::sizes_of(amount))
          if (size.beside(printed) &&
              tested::beside(size.value, printed.value * times).result == tested::Beside::Result::equal)
            return recipe::yaml_scalar(own);
    if (!amount.stated_any() || amount.begin != 0 || amount.noun_end > 0 || !ingredient.read.more.empty())
      return printed(line, times);
    return recipe::yaml_scalar(tested::words_of(*published, times) + own.substr(amount.end));
  }

  static bool is_plain_water(const suggest::CardLine& line) { return line.yaml == "water"; }

  /// The card's line of the food is kept where the form it says is one that the process covers.
  bool keeps(const reading::Ingredient& ingredient) const {
    return reading_.match.sure() && ingredient.read.unknown.empty() && ingredient.read.foods.size() == 1;
  }

  bool same(const std::string& yaml, const reading::Ingredient& ingredient) const {
    const std::string mine = suggest::bare(yaml);
    const std::string was(ingredient.line->text);
    return mine == was || mine == "each jar: " + was || yaml == recipe::yaml_scalar(was);
  }

  /// The line of the card for one of these foods, not used before; past the end: none.
  std::size_t card_line(const std::vector<std::string>& foods) const {
    for (std::size_t i = 0; i < used_.size(); ++i) {
      const auto* food = reading_.ingredients[i].food;
      if (!used_[i] && food != nullptr && tested::stands_for_any(*food, foods, knowledge_.catalogue))
        return i;
    }
    return used_.size();
  }

  /// The acid that the card has, where it is one of those that the process takes in each jar.
  std::size_t acid_choice() const {
    if (product_.acid_per_jar.empty()) return 0;
    const auto& choices = product_.acid_per_jar.front().one_of;
    for (std::size_t i = 0; i < choices.size(); ++i)
      if (card_line({choices[i].food}) < used_.size()) return i;
    return 0;
  }

  void field(std::string_view indent, std::string_view key, const std::string& value, std::string_view was) {
    if (value.empty()) return;
    out_ += fmt::format("{}{}: {}", indent, key, recipe::yaml_scalar(value));
    if (was.empty())
      out_ += suggest::comment("the card does not say");
    else if (was != value)
      out_ += suggest::comment("the card has: " + std::string(was));
    out_ += "\n";
  }

  /// "pint", "[pint, quart]"; of the card's own sizes in its words.
  std::string jar_words(const std::vector<CardFigures>& jars) const {
    std::string out;
    for (const auto& figures : jars) {
      const auto& own = suggest::own_jar(reading_, figures, height_);
      const bool same = own.jar != nullptr && own.size == figures.jar;
      const std::string name = recipe::yaml_scalar(same ? own.jar->name : writer_.jar_name(figures.jar));
      out += (out.empty() ? "" : ", ") + name;
    }
    return jars.size() == 1 ? out : "[" + out + "]";
  }

  void packing() {
    const auto& recipe = *reading_.recipe;
    const std::string pack = figures_.pack == recipe::Pack::hot ? "hot" : "raw";
    const bool same_pack = recipe.pack && recipe.pack->value == figures_.pack;
    field("", "pack", pack,
          same_pack     ? std::string_view(pack)
          : recipe.pack ? recipe.pack->text
                        : std::string_view());
    std::vector<std::string> own_sizes;
    std::size_t kept = 0;
    for (const auto& jar : reading_.jars) {
      if (jar.jar == nullptr) continue;
      if (std::find(own_sizes.begin(), own_sizes.end(), jar.jar->name) != own_sizes.end()) continue;
      own_sizes.push_back(jar.jar->name);
      kept += std::any_of(jars_.begin(), jars_.end(), [&](const auto& one) { return one.jar == jar.size; });
    }
    out_ += "jars: " + jar_words(jars_);
    if (own_sizes.empty())
      out_ += suggest::comment("the card does not say");
    else if (kept != own_sizes.size())
      out_ += suggest::comment(fmt::format("the card has: {}", fmt::join(own_sizes, ", ")));
    out_ += "\n";
    if (one_headspace()) headspace("", figures_);
  }

  bool one_headspace() const {
    const auto first = writer_.headspace(product_, figures_);
    return std::all_of(jars_.begin(), jars_.end(),
                       [&](const auto& jar) { return writer_.headspace(product_, jar) == first; });
  }

  void headspace(std::string_view indent, const CardFigures& figures) {
    const auto& own = suggest::own_jar(reading_, figures, height_).headspace;
    field(indent, "headspace", writer_.headspace(product_, figures),
          own ? quantity::words_of(own->value) : std::string());
  }

  /// One process for all jars where their figures are the same, else a list of one for each.
  void process() {
    out_ += "process:\n";
    const bool one = one_headspace() && std::all_of(jars_.begin(), jars_.end(), [&](const auto& jar) {
                       return jar.minutes == figures_.minutes && jar.psi == figures_.psi;
                     });
    if (one) return process_of(figures_, "  ", false);
    for (const auto& jar : jars_) process_of(jar, "  - ", true);
  }

  void process_of(const CardFigures& figures, std::string_view lead, bool listed) {
    const auto& jar = suggest::own_jar(reading_, figures, height_);
    const auto* own = jar.process;
    const std::string_view indent = listed ? "    " : "  ";
    const auto text = [](const auto& value) { return value ? std::string(value->text) : std::string(); };
    const bool water = figures.method == tested::TableMethod::boiling_water;
    const auto kind = water ? reading::MethodKind::boiling_water : reading::MethodKind::pressure;
    const std::string method = water ? "boiling water" : "pressure canner";
    const std::string own_method = own != nullptr ? text(own->method) : std::string();
    field(lead, "method", method, jar.method == kind ? method : own_method);
    if (!water) {
      const bool dial = figures.method == tested::TableMethod::pressure_dial;
      const std::string gauge = dial ? "dial" : "weighted";
      const bool same = jar.gauge == (dial ? recipe::Gauge::dial : recipe::Gauge::weighted);
      field(indent, "gauge", gauge, same ? gauge : own != nullptr ? text(own->gauge) : std::string());
      const std::string psi = quantity::words(psi_gauge(figures.psi.value_or(0)));
      const bool has = own != nullptr && own->pressure;
      const bool equal = has && std::abs(in_psi(own->pressure->value.low) - figures.psi.value_or(0)) < 0.01;
      field(indent, "pressure", psi, equal ? psi : has ? text(own->pressure) : std::string());
    }
    const std::string time = quantity::words(minutes(figures.minutes));
    const bool equal =
        own != nullptr && own->time && std::abs(in_minutes(own->time->value.low) - figures.minutes) < 0.01;
    field(indent, "time", time, equal ? time : own != nullptr ? text(own->time) : std::string());
    altitude(indent, own);
    if (listed && !one_headspace()) headspace(indent, figures);
    if (listed) out_ += std::string(indent) + "jars: " + jar_words({figures}) + "\n";
  }

  std::string own_altitude(const recipe::Placed<Interval<Altitude>>& own) const {
    return reading_.recipe->prose ? quantity::words(own.value) : std::string(own.text);
  }

  void altitude(std::string_view indent, const recipe::Process* own) {
    using From = suggest::Height::From;
    const bool same = own != nullptr && own->altitude && own->altitude->value == height_.range;
    const std::string height = same && !reading_.recipe->prose ? std::string(own->altitude->text)
                               : height_.range.exact()         ? quantity::words(height_.range.low)
                                                               : quantity::words(height_.range);
    out_ += std::string(indent) + "altitude: " + recipe::yaml_scalar(height);
    if (height_.from == From::lowest)
      out_ += suggest::comment("no altitude is known: these figures are for the lowest one; say yours");
    else if (own != nullptr && own->altitude && !same)
      out_ += suggest::comment("the card has: " + own_altitude(*own->altitude));
    else if (height_.from == From::writer)
      out_ += suggest::comment("where the card's writer cans");
    else if (!same && height_.from == From::kitchen)
      out_ += suggest::comment("the kitchen's");
    out_ += "\n";
  }

  /// The card's steps as comments; one that something was found in says so, that nobody takes it for tested.
  void own_steps() {
    const auto faulty = suggest::faulty_steps(*reading_.recipe, found_);
    for (std::size_t i = 0; i < faulty.size(); ++i)
      out_ += suggest::comment(
                  (faulty[i] ? "not to be followed, the check found fault with it: " : "the card's own: ") +
                  std::string(reading_.recipe->steps[i].value)) +
              "\n";
  }

  Words words_;
  bool keep_neutral_;
  const knowledge::Knowledge& knowledge_;
  const Reading& reading_;
  const tested::Product& product_;
  const suggest::Height& height_;
  const std::vector<CardFigures>& jars_;
  const CardFigures& figures_;  ///< of the first jar
  const RecipeReport& found_;   ///< what was found on the card
  suggest::CardWriter writer_;
  std::vector<bool> used_;
  std::string out_;
};

std::variant<Suggestion, InputError> suggest_one(const Checker& checker, const RecipeReport& found,
                                                 const recipe::Recipe& recipe, const CheckOptions& options) {
  reading::Settings settings;
  if (options.kitchen) settings.kitchen = &options.kitchen->get();
  settings.altitude = options.altitude;
  settings.today = recipe::read_date(options.today);
  const Reading reading = reading::build(recipe, settings, checker.knowledge());
  const auto wrong = [&](std::string message, std::string suggestion) {
    return InputError{found.path, recipe.title.at, std::move(message), std::move(suggestion)};
  };
  const auto* product = suggest::nearest_product(reading);
  if (product == nullptr)
    return wrong("no tested process is near to '" + std::string(recipe.title.value) + "'",
                 "`sealworthy lookup FOOD` lists those of a food");
  if (product->kept_cold || product->no_tested_process)
    return wrong("'" + product->title + "' has no process for the shelf", product->why_no_process);
  if (const auto why = suggest::another_dish(reading, *product); !why.empty())
    return wrong("the nearest tested process, '" + product->title + "', is another dish: " + why,
                 "`sealworthy lookup FOOD` lists the tested processes of a food");
  auto choice = suggest::choose_figures(reading, *product);
  if (!choice)
    return wrong("nothing is published for '" + product->title + "' at this altitude",
                 "ask the local extension office");
  Suggestion suggestion;
  suggestion.product = product->id;
  // All of the card's jars, else its first. The card's own words where they do; else those of the
  // publication. Its sugar and the like stay where the card is tested with them, which one with a thickener
  // is not.
  while (true) {
    for (const bool keep_neutral : {true, false}) {
      for (const auto words : {Words::card, Words::printed, Words::catalogue}) {
        suggestion.card = Writer(checker, reading, *product, *choice, found, words, keep_neutral).card();
        const auto report = checker.check_text("suggestion", suggestion.card, options).front();
        suggestion.verdict = report.verdict;
        suggestion.why_not_tested =
            report.verdict == Verdict::tested ? std::string() : suggest::open_points(report);
        if (report.verdict == Verdict::tested) return suggestion;
      }
    }
    if (choice->jars.size() == 1) return suggestion;
    choice->jars.resize(1);
  }
}

}  // namespace

Suggestions suggest_cards(const Checker& checker, std::string_view path, std::string_view text,
                          const CheckOptions& options) {
  Suggestions all;
  const auto error = [&](const yaml::Error& e) {
    all.errors.push_back({std::string(path), e.at, e.message, e.suggestion});
  };
  const auto found = knowledge::find_recipes(path, text, checker.knowledge(), {options.all, options.named});
  if (found.recipes.empty())
    error(
        {{1, 1}, "no canning recipe was found in this file", "`sealworthy read` shows what was understood"});
  const auto reports = checker.check_text(path, text, options);
  RecipeReport none_found;
  none_found.path = path;
  for (std::size_t i = 0; i < found.recipes.size(); ++i) {
    const auto& recipe = found.recipes[i].recipe;
    if (const auto* wrong = std::get_if<yaml::Error>(&recipe)) {
      error(*wrong);
      continue;
    }
    auto made = suggest_one(checker, i < reports.size() ? reports[i] : none_found,
                            std::get<recipe::Recipe>(recipe), options);
    if (auto* refused = std::get_if<InputError>(&made))
      all.errors.push_back(std::move(*refused));
    else
      all.cards.push_back(std::get<Suggestion>(std::move(made)));
  }
  return all;
}

}  // namespace sealworthy
