#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <chrono>
#include <ctime>
#include <iterator>
#include <memory>
#include <sealworthy/checker.hpp>
#include <sealworthy/formats.hpp>

#include "check_arguments.hpp"
#include "check_run.hpp"
#include "commands.hpp"
#include "fail_policy.hpp"
#include "outputs.hpp"
#include "path_lists.hpp"

namespace sealworthy::cli {
namespace {

/// Puts the paths of --paths-from behind those of the command line; false after the error was told.
bool take_listed_paths(CheckArguments& arguments) {
  arguments.named = arguments.paths;
  if (arguments.paths_from.empty()) {
    if (!arguments.paths.empty()) return true;
    tell({"check", {}, "no PATH is given", "name a card, a folder or - for standard input"});
    return false;
  }
  const auto& paths = arguments.paths;
  if (arguments.paths_from == "-" && std::find(paths.begin(), paths.end(), "-") != paths.end()) {
    tell({"--paths-from", {}, "standard input can't be both the list of paths and a card", {}});
    return false;
  }
  auto listed = read_path_list(arguments.paths_from);
  if (const auto* trouble = std::get_if<Trouble>(&listed)) {
    tell({trouble->path, {}, trouble->message, {}});
    return false;
  }
  auto& more = std::get<std::vector<std::string>>(listed);
  arguments.paths.insert(arguments.paths.end(), std::make_move_iterator(more.begin()),
                         std::make_move_iterator(more.end()));
  return true;
}

int check(CheckArguments arguments) {
  const auto places = output_places(arguments.outputs, arguments.common.format);
  if (!places.error.empty()) {
    tell({"--output", {}, places.error, {}});
    return unreadable;
  }
  if (!take_listed_paths(arguments)) return unreadable;
  const auto checker = make_checker(arguments.common);
  if (!checker) return unreadable;
  if (arguments.today.empty()) arguments.today = local_date();
  CheckOptions options;
  options.today = arguments.today;
  options.explain = arguments.explain;
  options.all = arguments.all;
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
  // A page has room for the formula beside the card.
  const bool page = std::all_of(places.places.begin(), places.places.end(),
                                [](const OutputPlace& place) { return place.format == ReportFormat::html; });
  options.side_by_side = page || !arguments.against.empty();
  const auto fail = fail_policy(arguments.fail_on, arguments.require);
  Outputs outputs(places.places, *checker, arguments.common.color, fail);
  if (!outputs.failed().empty()) {
    tell({outputs.failed(), {}, "this file can't be written", {}});
    return unreadable;
  }
  return CheckRun(arguments, *checker, std::move(options), fail, outputs).all();
}

}  // namespace

void add_check(CLI::App& app, int& status) {
  auto arguments = std::make_shared<CheckArguments>();
  auto* command = app.add_subcommand("check", "Check recipe cards and report what in them can hurt someone");
  auto& a = *arguments;
  command->add_option(
      "PATH", a.paths,
      "A recipe (card, web page, Markdown, JSON, text), a folder of them, or - for standard input");
  command
      ->add_option("--paths-from", a.paths_from,
                   "File that lists further PATHs, one a line or NUL-separated; - for standard input")
      ->type_name("FILE");
  command
      ->add_option("--kitchen", a.common.kitchen,
                   "Kitchen file; without it, the nearest kitchen.yaml beside or above each card")
      ->type_name("FILE");
  command
      ->add_option("--altitude", a.common.altitude, "Where you can: 5,280 ft, 1600 m, or a range 0-1,000 ft")
      ->type_name("LENGTH");
  command
      ->add_option(
          "--against", a.against,
          "Compare with this tested process (an id, as lookup shows it) instead of what a card follows, and "
          "put card and formula side by side")
      ->type_name("ID");
  command
      ->add_option("--format", a.common.format,
                   "text for people; json or ndjson (a recipe a line) for programs; sarif, junit or "
                   "annotations for build services; html one page to keep")
      ->check(CLI::IsMember(std::vector<std::string>(report_formats.begin(), report_formats.end())))
      ->capture_default_str();
  command
      ->add_option("--output", a.outputs,
                   "Write the report to this file instead of standard output; may be given several times, as "
                   "sarif:report.sarif, text:-")
      ->type_name("[FORMAT:]FILE")
      ->allow_extra_args(false);
  add_fail_options(*command, a.fail_on, a.require);
  command
      ->add_option("--baseline", a.baseline,
                   "Findings in this file are known: counted, but not failing. A danger is never known")
      ->type_name("FILE");
  command->add_option("--write-baseline", a.write_baseline, "Write the findings of this run to such a file")
      ->type_name("FILE");
  command
      ->add_option("--cache", a.cache,
                   "Folder that keeps reports, so that what did not change is not checked again")
      ->type_name("FOLDER");
  command->add_flag("--explain", a.explain,
                    "Tell what the figures mean: heat, altitude and acidity worked out beside each finding");
  command->add_flag("--all", a.all, "Check recipes of pages that are not about canning too");
  command->add_option("--jobs", a.jobs, "Threads; 0 takes one a core")
      ->check(CLI::Range(0, 1024))
      ->capture_default_str();
  command
      ->add_option("--today", a.today,
                   "The date to judge by (gauge tests), like 2026-08-31; without it, today")
      ->check(CLI::Validator(date_error, "DATE"));
  command
      ->add_option("--rules", a.common.rules,
                   "Folder or file of further rules (YAML), may be given several times")
      ->type_name("PATH")
      ->allow_extra_args(false);
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
