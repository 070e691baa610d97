#include <CLI/CLI.hpp>
#include <memory>

#include "commands.hpp"
#include "option_table.hpp"
#include "terminal.hpp"

namespace sealworthy::cli {
namespace {

int put(const std::string& text) { return Output("").write(text) ? fine : unreadable; }

}  // namespace

void add_completions(CLI::App& app, int& status) {
  auto shell = std::make_shared<std::string>();
  auto* command =
      app.add_subcommand("completions", "Print completions for a shell, made of these very options");
  command->add_option("SHELL", *shell, "Which shell")
      ->required()
      ->check(CLI::IsMember({"bash", "zsh", "fish"}));
  command->callback([&app, shell, &status] {
    const auto table = option_table(app);
    status = put(*shell == "bash"  ? bash_completions(table)
                 : *shell == "zsh" ? zsh_completions(table)
                                   : fish_completions(table));
  });
}

void add_man(CLI::App& app, int& status) {
  auto* command = app.add_subcommand("man", "Print the manual page, made of these very options (man -l -)");
  command->callback([&app, &status] { status = put(man_page(option_table(app))); });
}

}  // namespace sealworthy::cli
