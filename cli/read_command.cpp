#include <CLI/CLI.hpp>
#include <memory>
#include <sealworthy/read.hpp>

#include "commands.hpp"
#include "paths.hpp"
#include "terminal.hpp"

namespace sealworthy::cli {
namespace {

struct ReadArguments {
  Common common;
  std::vector<std::string> paths;
};

constexpr std::size_t file_limit = 1 << 20;

int run(const ReadArguments& arguments) {
  const auto checker = make_checker(arguments.common);
  if (!checker) return unreadable;
  const bool json = arguments.common.format == "json";
  const TextStyle style{terminal_width(Stream::out), false};
  Output output("");
  auto expanded = expand(arguments.paths);
  bool failed = false;
  bool first = true;
  if (json) output.write("{\"recipes\": [");
  for (const auto& path : expanded.files) {
    auto text = read_file(path, file_limit);
    if (auto* trouble = std::get_if<Trouble>(&text)) {
      expanded.troubles.push_back(std::move(*trouble));
      continue;
    }
    const auto read = read_recipes(*checker, path, std::get<std::string>(text),
                                   json ? ReadFormat::json : ReadFormat::text, style);
    failed = failed || read.unreadable;
    if (!json) output.write(path + "\n");
    for (const auto& recipe : read.recipes) {
      if (json) output.write(first ? "\n  " : ",\n  ");
      output.write(recipe);
      first = false;
    }
  }
  if (json) output.write(first ? "]}\n" : "\n]}\n");
  for (const auto& trouble : expanded.troubles) tell({trouble.path, {}, trouble.message, {}});
  return failed || !expanded.troubles.empty() ? unreadable : fine;
}

}  // namespace

void add_read(CLI::App& app, int& status) {
  auto arguments = std::make_shared<ReadArguments>();
  auto& a = *arguments;
  auto* command =
      app.add_subcommand("read", "Show what was understood of a card, line by line, without judging it");
  command->add_option("PATH", a.paths, "A card, a folder of cards, or - for standard input")->required();
  command->add_option("--format", a.common.format, "text for people, json for programs")
      ->check(CLI::IsMember({"text", "json"}))
      ->capture_default_str();
  command->add_option("--rules", a.common.rules, "Folder or file of further rules (YAML)");
  command->callback([arguments, &status] { status = run(*arguments); });
}

}  // namespace sealworthy::cli
