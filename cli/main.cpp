#include <spdlog/sinks/stdout_sinks.h>
#include <spdlog/spdlog.h>

#include <CLI/CLI.hpp>
#include <exception>
#include <sealworthy/report.hpp>

#include "commands.hpp"

namespace {

/// Everything that is not a result goes to standard error through one logger.
void set_up_log() {
  auto logger = spdlog::stderr_logger_st("sealworthy");
  logger->set_pattern("sealworthy: %v");
  spdlog::set_default_logger(std::move(logger));
}

int run(int argc, char** argv) {
  set_up_log();
  CLI::App app{
      "Checks home-canning recipes against published, tested processes.\n"
      "It compares and explains; it never calls a recipe safe because it found nothing, and it does not "
      "replace your\n"
      "canner's manual, the local extension office or local law."};
  app.name("sealworthy");
  app.set_version_flag("--version", std::string(sealworthy::version()));
  app.require_subcommand(1);
  app.footer(
      "Exit status: 0 nothing at or above --fail-on; 1 something is; 2 a recipe or an argument could not be "
      "read.\n"
      "`sealworthy COMMAND --help` tells more.");
  int status = sealworthy::cli::fine;
  sealworthy::cli::add_check(app, status);
  sealworthy::cli::add_lookup(app, status);
  sealworthy::cli::add_explain(app, status);
  sealworthy::cli::add_read(app, status);
  sealworthy::cli::add_plan(app, status);
  sealworthy::cli::add_suggest(app, status);
  sealworthy::cli::add_study(app, status);
  sealworthy::cli::add_merge(app, status);
  sealworthy::cli::add_completions(app, status);
  sealworthy::cli::add_man(app, status);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? sealworthy::cli::fine : sealworthy::cli::unreadable;
  }
  return status;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    return run(argc, argv);
  } catch (const std::exception& error) {
    spdlog::error("{}", error.what());
  } catch (...) {
    spdlog::error("something went wrong that has no name");
  }
  return sealworthy::cli::unreadable;
}
