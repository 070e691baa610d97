#include <algorithm>
#include <exception>
#include <new>
#include <sealworthy/checker.hpp>
#include <utility>

#include "checks/between_rules.hpp"
#include "checks/side_by_side.hpp"
#include "checks/table_use.hpp"
#include "checks/verdict.hpp"
#include "knowledge/embedded.hpp"
#include "knowledge/knowledge.hpp"
#include "knowledge/recipes.hpp"
#include "reading/build.hpp"
#include "reading/canners.hpp"
#include "recipe/kitchen.hpp"
#include "recipe/reader.hpp"
#include "recipe/recipe.hpp"
#include "science/study.hpp"
#include "yaml/document.hpp"

namespace sealworthy {
namespace {

Finding unreadable_finding(const yaml::Error& error) {
  Finding finding;
  finding.rule = "unreadable";
  finding.severity = Severity::warning;
  finding.topic = Topic::card;
  finding.at = error.at;
  finding.message = error.message;
  finding.instead = error.suggestion;
  return finding;
}

RecipeReport unreadable(std::string_view path, int document, const yaml::Error& error) {
  RecipeReport report;
  report.path = path;
  report.document = document;
  report.at = error.at;
  report.verdict = Verdict::unreadable;
  report.findings.push_back(unreadable_finding(error));
  return report;
}

bool worse_first(const Finding& a, const Finding& b) {
  if (a.severity != b.severity) return a.severity > b.severity;
  if (a.at != b.at) return a.at < b.at;
  if (a.rule != b.rule) return a.rule < b.rule;
  return a.message < b.message;
}

bool same_fault(const Finding& a, const Finding& b) {
  return a.rule == b.rule && a.at == b.at && a.message == b.message;
}

/// Sorted, each fault once: two jars of one size class would tell it twice.
void tidy(std::vector<Finding>& findings) {
  std::stable_sort(findings.begin(), findings.end(), worse_first);
  findings.erase(std::unique(findings.begin(), findings.end(), same_fault), findings.end());
}

/// Whether a reason still holds today; one with a last day does not hold where nobody knows the day.
bool holds(const recipe::Accept& accept, const std::optional<recipe::Date>& today) {
  return !accept.until || (today && *today <= accept.until->value);
}

/// The card's own reasons for what it accepts; a danger can't be accepted.
void mark_accepted(const recipe::Recipe& recipe, const std::optional<recipe::Date>& today,
                   std::vector<Finding>& findings) {
  for (const recipe::Accept& accept : recipe.accept) {
    for (Finding& finding : findings) {
      if (finding.severity == Severity::danger || finding.rule != accept.rule.value) continue;
      if (holds(accept, today))
        finding.accepted_because = accept.because;
      else
        finding.accepted_until = accept.until->text;
    }
  }
}

std::vector<std::string> each_once(const std::vector<std::string>& texts) {
  std::vector<std::string> once;
  for (const std::string& text : texts) {
    if (std::find(once.begin(), once.end(), text) == once.end()) once.push_back(text);
  }
  return once;
}

/// What the findings mean, and the figures behind them.
void explain_report(const reading::Reading& reading, const knowledge::Knowledge& knowledge,
                    RecipeReport& report) {
  const auto study = std::make_shared<const Study>(science::study_of(reading, knowledge));
  for (Finding& finding : report.findings) finding.meaning = science::meaning_of(finding, *study, knowledge);
  report.study = study;
}

RecipeReport check_card(const recipe::Recipe& recipe, const reading::Settings& settings,
                        const knowledge::Knowledge& knowledge, bool explain) {
  const reading::Reading reading = reading::build(recipe, settings, knowledge);
  checks::Results results;
  results.points.reserve(16);
  for (const auto& check : knowledge.checks) check->run(reading, results);
  checks::settle_between(knowledge.rules, results.findings);
  tidy(results.findings);
  mark_accepted(recipe, settings.today, results.findings);

  RecipeReport report;
  report.title = recipe.title.value;
  report.at = recipe.title.at;
  report.matched = checks::describe_match(reading);
  report.points = checks::deciding_points(reading, results.points);
  report.verdict = checks::decide(reading, report.points, results.findings);
  report.findings = std::move(results.findings);
  report.assumed = each_once(results.assumed);
  if (settings.side_by_side) report.compared = checks::side_by_side(reading);
  report.tables = checks::table_uses(reading);
  if (reading.kitchen != nullptr) report.kitchen = reading.kitchen->path;
  if (explain) explain_report(reading, knowledge, report);
  return report;
}

/// Line starts of a text, so that its lines can be quoted. Cost: one pass, made only if something was found.
class Lines {
 public:
  explicit Lines(std::string_view text, int first = 1) : text_(text), first_(first) {}

  std::string_view line(int number) {
    if (starts_.empty()) index();
    if (number < first_) return {};
    const auto i = static_cast<std::size_t>(number - first_) + 1;
    if (i >= starts_.size()) return {};
    std::string_view found = text_.substr(starts_[i - 1], starts_[i] - starts_[i - 1]);
    while (!found.empty() && (found.back() == '\n' || found.back() == '\r')) found.remove_suffix(1);
    return found;
  }

 private:
  void index() {
    starts_.push_back(0);
    for (std::size_t i = 0; i < text_.size(); ++i) {
      // A lone carriage return ends a line in YAML too.
      const bool lone_return = text_[i] == '\r' && (i + 1 == text_.size() || text_[i + 1] != '\n');
      if (text_[i] == '\n' || lone_return) starts_.push_back(i + 1);
    }
    starts_.push_back(text_.size());
  }

  std::string_view text_;
  int first_;  ///< number of the first line
  std::vector<std::size_t> starts_;
};

void quote_lines(RecipeReport& report, Lines& lines) {
  for (const Finding& finding : report.findings) {
    if (finding.from_kitchen || finding.at.line < 1) continue;
    report.source_line_numbers.push_back(finding.at.line);
  }
  auto& numbers = report.source_line_numbers;
  std::sort(numbers.begin(), numbers.end());
  numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
  for (const int number : numbers) report.source_lines.emplace_back(lines.line(number));
}

RecipeReport check_found(std::string_view path, const knowledge::FoundRecipe& found,
                         const reading::Settings& settings, const knowledge::Knowledge& knowledge,
                         bool explain) {
  if (const auto* error = std::get_if<yaml::Error>(&found.recipe)) {
    RecipeReport report = unreadable(path, found.number, *error);
    report.title = found.title;
    return report;
  }
  RecipeReport report = check_card(std::get<recipe::Recipe>(found.recipe), settings, knowledge, explain);
  report.path = path;
  report.document = found.number;
  return report;
}

/// As check_found, but whatever goes wrong inside leaves this one recipe unreadable.
RecipeReport check_guarded(std::string_view path, const knowledge::FoundRecipe& found,
                           const reading::Settings& settings, const knowledge::Knowledge& knowledge,
                           bool explain) {
  try {
    return check_found(path, found, settings, knowledge, explain);
  } catch (const std::bad_alloc&) {
    throw;
  } catch (const std::exception& error) {
    return unreadable(path, found.number,
                      {{1, 1},
                       std::string("the checker failed on this recipe: ") + error.what(),
                       "please report it with the recipe"});
  }
}

reading::Settings settings_of(const CheckOptions& options) {
  reading::Settings settings;
  if (options.kitchen) settings.kitchen = &options.kitchen->get();
  settings.altitude = options.altitude;
  settings.today = recipe::read_date(options.today);
  settings.against = options.against;
  settings.side_by_side = options.side_by_side;
  return settings;
}

FileReport check_all(std::string_view path, const knowledge::FoundRecipes& found, Lines lines,
                     const knowledge::Knowledge& knowledge, const CheckOptions& options) {
  const auto settings = settings_of(options);
  FileReport report;
  report.skipped = found.skipped;
  for (const auto& one : found.recipes) {
    report.recipes.push_back(check_guarded(path, one, settings, knowledge, options.explain));
    quote_lines(report.recipes.back(), lines);
  }
  return report;
}

}  // namespace

std::variant<Kitchen, InputError> Kitchen::read(std::string path, std::string_view text,
                                                std::string_view today) {
  const auto documents = yaml::read_documents(text);
  if (documents.empty())
    return InputError{std::move(path), {1, 1}, "the kitchen file is empty", "give it an `altitude:`"};
  if (const auto* bad = std::get_if<yaml::BadDocument>(&documents.front()))
    return InputError{std::move(path), bad->error.at, bad->error.message, bad->error.suggestion};
  auto read = recipe::read_kitchen(std::get<yaml::Document>(documents.front()), recipe::read_date(today));
  if (const auto* error = std::get_if<yaml::Error>(&read))
    return InputError{std::move(path), error->at, error->message, error->suggestion};
  auto kitchen = std::make_shared<recipe::Kitchen>(std::get<recipe::Kitchen>(std::move(read)));
  kitchen->path = std::move(path);
  Kitchen result;
  result.kitchen_ = std::move(kitchen);
  return result;
}

std::variant<Kitchen, InputError> Checker::read_kitchen(std::string path, std::string_view text,
                                                        std::string_view today) const {
  auto read = Kitchen::read(path, text, today);
  const auto* kitchen = std::get_if<Kitchen>(&read);
  if (kitchen == nullptr) return read;
  for (const auto& canner : kitchen->get().canners) {
    if (auto error = reading::refuse_canner(canner, knowledge().methods))
      return InputError{std::move(path), error->at, error->message, error->suggestion};
  }
  return read;
}

const std::string& Kitchen::path() const { return kitchen_->path; }

Checker Checker::builtin() { return {}; }

const knowledge::Knowledge& Checker::knowledge() const {
  return knowledge_ ? *knowledge_ : knowledge::Knowledge::builtin();
}

std::variant<Checker, std::vector<InputError>> Checker::with_rules(
    const std::vector<std::pair<std::string, std::string>>& files) {
  std::vector<knowledge::NamedDocument> documents;
  std::vector<InputError> wrong;
  if (const auto embedded = yaml::unpack(embedded_rules())) {
    for (const auto& [name, document] : *embedded) documents.push_back({name, document});
  }
  for (const auto& [path, text] : files) {
    for (const auto& document : yaml::read_documents(text)) {
      if (const auto* bad = std::get_if<yaml::BadDocument>(&document)) {
        wrong.push_back({path, bad->error.at, bad->error.message, bad->error.suggestion});
      } else {
        documents.push_back({path, std::get<yaml::Document>(document)});
      }
    }
  }
  std::vector<foods::LoadError> errors;
  Checker checker;
  checker.knowledge_ = knowledge::Knowledge::build(documents, errors);
  for (const auto& [file, error] : errors) wrong.push_back({file, error.at, error.message, error.suggestion});
  if (!wrong.empty()) return wrong;
  return checker;
}

bool Checker::knows(std::string_view id) const { return knowledge().tables.find(id) != nullptr; }

std::string Checker::nearest(std::string_view id) const {
  return std::string(knowledge().tables.nearest_id(id).value_or(""));
}

std::size_t most_bytes(std::string_view path, std::string_view beginning) {
  return recipe::most_bytes(recipe::kind_of(path, beginning));
}

bool recipe_a_line(std::string_view path, std::string_view beginning) {
  return recipe::kind_of(path, beginning) == recipe::FileKind::json_lines;
}

std::vector<RecipeReport> Checker::check_text(std::string_view path, std::string_view text,
                                              const CheckOptions& options) const {
  return check_file(path, text, options).recipes;
}

FileReport Checker::check_file(std::string_view path, std::string_view text,
                               const CheckOptions& options) const {
  const auto found = knowledge::find_recipes(path, text, knowledge(), {options.all, options.named});
  auto report = check_all(path, found, Lines(text), knowledge(), options);
  if (report.recipes.empty() && report.skipped == 0) {
    report.recipes.push_back(unreadable(
        path, 1, {{1, 1}, "The file holds no recipe.", "Write a card that begins with `recipe:`."}));
  }
  return report;
}

FileReport Checker::check_lines(std::string_view path, std::string_view lines, int first_line,
                                const CheckOptions& options) const {
  const auto found = knowledge::find_in_lines(lines, first_line, knowledge(), options.all);
  return check_all(path, found, Lines(lines, first_line), knowledge(), options);
}

}  // namespace sealworthy
