#pragma once

/// The commands and options as the parser holds them, for what is made of them: man page, shell completions.

#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace sealworthy::cli {

struct OptionRow {
  std::vector<std::string> names;    ///< "--format", "-h"; empty for a positional
  std::string positional;            ///< "PATH"
  std::string value;                 ///< what it takes, "FILE"; empty for a flag
  std::vector<std::string> choices;  ///< the words it takes, where it takes only those
  std::string description;
  std::string standard;  ///< value taken when it is not given; may be empty
  bool required = false;

  [[nodiscard]] bool is_flag() const { return positional.empty() && value.empty(); }
};

struct CommandRow {
  std::string name;
  std::string description;
  std::string footer;
  std::vector<OptionRow> options;
};

struct OptionTable {
  CommandRow program;                ///< its own options, --help and --version
  std::vector<CommandRow> commands;  ///< in the order of the help
};

OptionTable option_table(const CLI::App& app);

/// The manual page in the man macros of roff.
std::string man_page(const OptionTable& table);
/// Completions for "bash", "zsh" or "fish".
std::string bash_completions(const OptionTable& table);
std::string zsh_completions(const OptionTable& table);
std::string fish_completions(const OptionTable& table);

}  // namespace sealworthy::cli
