#include <fmt/format.h>
#include <tbb/global_control.h>
#include <tbb/parallel_pipeline.h>

#include <CLI/CLI.hpp>
#include <chrono>
#include <ctime>
#include <memory>
#include <mutex>
#include <sealworthy/checker.hpp>
#include <sealworthy/report.hpp>
#include <thread>

#include "commands.hpp"
#include "kitchens.hpp"
#include "paths.hpp"
#include "progress.hpp"
#include "terminal.hpp"

namespace sealworthy::cli {
namespace {

struct CheckArguments {
  Common common;
  std::vector<std::string> paths;
  std::string fail_on = "warning";
  std::string require;
  std::string today;
  std::string against;
  int jobs = 0;
};

constexpr std::size_t file_limit =
    1 << 20;  // the limit that documents are read with; more is told as an error there

std::string local_date() {
  const auto now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm parts{};
  localtime_r(&now, &parts);
  return fmt::format("{:04}-{:02}-{:02}", parts.tm_year + 1900, parts.tm_mon + 1, parts.tm_mday);
}

std::unique_ptr<ReportWriter> make_writer(const Common& common) {
  if (common.format == "json") return std::make_unique<JsonWriter>();
  const bool terminal = common.output.empty() && is_terminal(Stream::out);
  return std::make_unique<TextWriter>(
      TextStyle{terminal_width(Stream::out), use_color(common.color, terminal)});
}

/// Does one recipe make the run fail?
bool fails(const RecipeReport& report, const CheckArguments& arguments) {
  if (arguments.require == "tested" && report.verdict != Verdict::tested) return true;
  for (const auto& finding : report.findings) {
    if (!finding.accepted_because.empty()) continue;
    for (const auto s : {Severity::notice, Severity::caution, Severity::warning, Severity::danger})
      if (arguments.fail_on == to_string(s) && finding.severity >= s) return true;
  }
  return false;
}

/// The reports of one file on their way from the checking threads to the writer.
struct Checked {
  std::vector<RecipeReport> reports;
  std::optional<Trouble> trouble;
};

class Run {
 public:
  Run(const CheckArguments& arguments, const Checker& checker, CheckOptions options, Output& output)
      : arguments_(arguments),
        checker_(checker),
        options_(std::move(options)),
        output_(output),
        writer_(make_writer(arguments.common)),
        kitchens_([this](const InputError& error) { trouble(error); }) {}

  int all() {
    if (!arguments_.common.kitchen.empty() && !kitchens_.use_for_all(arguments_.common.kitchen))
      return unreadable;
    const auto expanded = expand(arguments_.paths);
    for (const auto& t : expanded.troubles) trouble({t.path, {}, t.message, {}});
    progress_.start(expanded.files.size());
    put(writer_->begin());
    check_all(expanded.files);
    put(writer_->end(summary_));
    progress_.stop();
    if (!written_) tell("the report could not be written");
    if (troubled_ || !written_ || summary_.count(Verdict::unreadable) > 0) return unreadable;
    return failed_ ? found : fine;
  }

 private:
  Checked check(const std::string& path) {
    auto text = read_file(path, file_limit);
    if (auto* t = std::get_if<Trouble>(&text)) return {{}, std::move(*t)};
    auto options = options_;
    if (auto kitchen = kitchens_.of(path)) options.kitchen = std::move(kitchen);
    return {checker_.check_text(path, std::get<std::string>(text), options), {}};
  }

  void write(const Checked& checked) {
    if (checked.trouble) trouble({checked.trouble->path, {}, checked.trouble->message, {}});
    for (const auto& report : checked.reports) {
      summary_.add(report);
      failed_ = failed_ || fails(report, arguments_);
      put(writer_->recipe(report));
    }
    progress_.one_more();
  }

  /// Reports are written in the order of the files whatever the number of threads; at most a few files per
  /// thread are under way at once, which bounds memory.
  void check_all(const std::vector<std::string>& files) {
    const auto jobs = static_cast<std::size_t>(
        arguments_.jobs > 0 ? arguments_.jobs
                            : static_cast<int>(std::max(1U, std::thread::hardware_concurrency())));
    if (jobs == 1 || files.size() < 2) {
      for (const auto& file : files) write(check(file));
      return;
    }
    const tbb::global_control limit(tbb::global_control::max_allowed_parallelism, jobs);
    std::size_t next = 0;
    constexpr std::size_t batch = 16;
    using Batch = std::pair<std::size_t, std::size_t>;
    const auto take =
        tbb::make_filter<void, Batch>(tbb::filter_mode::serial_in_order, [&](tbb::flow_control& control) {
          if (next >= files.size()) control.stop();
          const Batch range{next, std::min(next + batch, files.size())};
          next = range.second;
          return range;
        });
    const auto work = tbb::make_filter<Batch, std::shared_ptr<std::vector<Checked>>>(
        tbb::filter_mode::parallel, [&](Batch range) {
          auto done = std::make_shared<std::vector<Checked>>();
          done->reserve(batch);
          for (auto i = range.first; i < range.second; ++i) done->push_back(check(files[i]));
          return done;
        });
    const auto put_out = tbb::make_filter<std::shared_ptr<std::vector<Checked>>, void>(
        tbb::filter_mode::serial_in_order, [&](const std::shared_ptr<std::vector<Checked>>& done) {
          for (const auto& checked : *done) write(checked);
        });
    tbb::parallel_pipeline(4 * jobs, take & work & put_out);
  }

  void put(const std::string& text) { written_ = output_.write(text) && written_; }

  void trouble(const InputError& error) {
    const std::scoped_lock lock(mutex_);
    troubled_ = true;
    progress_.clear();
    tell(error);
  }

  const CheckArguments& arguments_;
  const Checker& checker_;
  CheckOptions options_;
  Output& output_;
  std::unique_ptr<ReportWriter> writer_;
  Kitchens kitchens_;
  Progress progress_;
  Summary summary_;
  std::mutex mutex_;
  bool troubled_ = false;
  bool failed_ = false;
  bool written_ = true;
};

int check(const CheckArguments& arguments) {
  const auto checker = make_checker(arguments.common);
  if (!checker) return unreadable;
  CheckOptions options;
  options.today = arguments.today.empty() ? local_date() : arguments.today;
  if (!arguments.common.altitude.empty()) {
    options.altitude = read_altitude_option(arguments.common.altitude);
    if (!options.altitude) return unreadable;
  }
  if (!arguments.against.empty() && !checker->knows(arguments.against)) {
    const auto near = checker->nearest(arguments.against);
    tell({"--against",
          {},
          "no tested process has the id '" + arguments.against + "'",
          near.empty() ? "`sealworthy lookup WORDS` shows the ids" : "did you mean '" + near + "'?"});
    return unreadable;
  }
  options.against = arguments.against;
  options.side_by_side = !arguments.against.empty();
  Output output(arguments.common.output);
  if (!output.ok()) {
    tell({arguments.common.output, {}, "this file can't be written", {}});
    return unreadable;
  }
  return Run(arguments, *checker, std::move(options), output).all();
}

/// A real day of the calendar, written as ISO 8601 has it.
std::string date_error(const std::string& text) {
  int year = 0, month = 0, day = 0;
  char end = 0;
  if (text.size() == 10 && std::sscanf(text.c_str(), "%4d-%2d-%2d%c", &year, &month, &day, &end) == 3 &&
      std::chrono::year_month_day(std::chrono::year(year), std::chrono::month(static_cast<unsigned>(month)),
                                  std::chrono::day(static_cast<unsigned>(day)))
          .ok())
    return {};
  return "'" + text + "' is no date; write it like 2026-08-31";
}

}  // namespace

void add_check(CLI::App& app, int& status) {
  auto arguments = std::make_shared<CheckArguments>();
  auto* command = app.add_subcommand("check", "Check recipe cards and report what in them can hurt someone");
  auto& a = *arguments;
  command->add_option("PATH", a.paths, "A card, a folder of cards (*.yaml, *.yml), or - for standard input")
      ->required();
  command->add_option("--kitchen", a.common.kitchen,
                      "Kitchen file; without it, the nearest kitchen.yaml beside or above each card");
  command->add_option("--altitude", a.common.altitude,
                      "Where you can: 5,280 ft, 1600 m, or a range 0-1,000 ft");
  command->add_option(
      "--against", a.against,
      "Compare with this tested process (an id, as lookup shows it) instead of what a card follows, and "
      "put card and formula side by side");
  command->add_option("--format", a.common.format, "text for people, json for programs")
      ->check(CLI::IsMember({"text", "json"}))
      ->capture_default_str();
  command->add_option("--output", a.common.output,
                      "Write the report to this file instead of standard output");
  command->add_option("--fail-on", a.fail_on, "Lowest severity that makes the exit status 1")
      ->check(CLI::IsMember({"danger", "warning", "caution", "notice", "never"}))
      ->capture_default_str();
  command->add_option("--require", a.require, "tested: exit status 1 unless every card is tested")
      ->check(CLI::IsMember({"tested"}));
  command->add_option("--jobs", a.jobs, "Threads; 0 takes one a core")
      ->check(CLI::Range(0, 1024))
      ->capture_default_str();
  command
      ->add_option("--today", a.today,
                   "The date to judge by (gauge tests), like 2026-08-31; without it, today")
      ->check(CLI::Validator(date_error, "DATE"));
  command->add_option("--rules", a.common.rules,
                      "Folder or file of further rules (YAML), may be given several times");
  command->add_option("--color", a.common.color, "Colour in text output")
      ->check(CLI::IsMember({"auto", "always", "never"}))
      ->capture_default_str();
  command->footer(
      "Verdicts: tested (follows a published process point by point), hazard, unproven (nothing published "
      "vouches for\n"
      "it), unreadable. Exit status: 0 nothing at or above --fail-on; 1 something is; 2 something could not "
      "be read.");
  command->callback([arguments, &status] { status = check(*arguments); });
}

}  // namespace sealworthy::cli
