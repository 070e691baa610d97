#pragma once

/// The commands of `sealworthy`, each in a file of its own. A command returns the exit status.

#include <optional>
#include <sealworthy/checker.hpp>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace sealworthy::cli {

/// Exit statuses, as the help tells them.
enum Status : int { fine = 0, found = 1, unreadable = 2 };

/// Options that several commands share.
struct Common {
  std::string kitchen;
  std::string altitude;
  std::string format = "text";
  std::string color = "auto";
  std::vector<std::string> rules;  ///< folders or files of further rules
};

/// Sets up the subcommand; `status` is filled in when it has run.
void add_check(CLI::App& app, int& status);
void add_lookup(CLI::App& app, int& status);
void add_explain(CLI::App& app, int& status);
void add_read(CLI::App& app, int& status);
void add_plan(CLI::App& app, int& status);
void add_suggest(CLI::App& app, int& status);
void add_study(CLI::App& app, int& status);
void add_merge(CLI::App& app, int& status);
void add_completions(CLI::App& app, int& status);
void add_man(CLI::App& app, int& status);

/// The built-in rules, or those with the folders of --rules; nullopt after the errors were told.
std::optional<Checker> make_checker(const Common& common);
/// --altitude: "5,280 ft", "1600 m", "0-1,000 ft"; nullopt after the error was told.
std::optional<Interval<Altitude>> read_altitude_option(const std::string& text);
/// Today, as ISO 8601 has it.
std::string local_date();
/// For CLI11: why a text is no real day of the calendar as ISO 8601 has it; empty where it is one.
std::string date_error(const std::string& text);
/// Tells an error on standard error: "sealworthy: path:line:column: message".
void tell(const InputError& error);
void tell(const std::string& message);

}  // namespace sealworthy::cli
