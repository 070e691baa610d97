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
  bool all = false;
};

int run(const ReadArguments& arguments) {
  const auto checker = make_checker(arguments.common);
  if (!checker) return unreadable;
  const bool json = arguments.common.format == "json";
  const bool card = arguments.common.format == "card";
  const auto format = json ? ReadFormat::json : card ? ReadFormat::card : ReadFormat::text;
  const TextStyle style{terminal_width(Stream::out), false};
  Output output("");
  auto expanded = expand(arguments.paths);
  bool failed = false;
  bool first = true;
  std::size_t skipped = 0;
  if (json) output.write("{\"recipes\": [");
  for (const auto& path : expanded.files) {
    auto text = read_file(path, most_bytes(path));
    if (auto* trouble = std::get_if<Trouble>(&text)) {
      expanded.troubles.push_back(std::move(*trouble));
      continue;
    }
    const auto read = read_recipes(*checker, path, std::get<std::string>(text), format, style, arguments.all);
    failed = failed || read.unreadable;
    skipped += read.skipped;
    if (format == ReadFormat::text && !read.recipes.empty()) output.write(path + "\n");
    for (const auto& recipe : read.recipes) {
      if (json) output.write(first ? "\n  " : ",\n  ");
      if (card && !first) output.write("---\n");
      output.write(recipe);
      first = false;
    }
  }
  if (json) output.write(first ? "]}\n" : "\n]}\n");
  if (skipped > 0)
    tell(std::to_string(skipped) + (skipped == 1
                                        ? " page or recipe is not about canning; --all shows it too"
                                        : " pages or recipes are not about canning; --all shows them too"));
  for (const auto& trouble : expanded.troubles) tell({trouble.path, {}, trouble.message, {}});
  return failed || !expanded.troubles.empty() ? unreadable : fine;
}

}  // namespace

void add_read(CLI::App& app, int& status) {
  auto arguments = std::make_shared<ReadArguments>();
  auto& a = *arguments;
  auto* command =
      app.add_subcommand("read", "Show what was understood of a recipe, line by line, without judging it");
  command
      ->add_option(
          "PATH", a.paths,
          "A recipe (card, web page, Markdown, JSON, text), a folder of them, or - for standard input")
      ->required();
  command
      ->add_option("--format", a.common.format,
                   "text for people, json for programs, card for a YAML card to correct")
      ->check(CLI::IsMember({"text", "json", "card"}))
      ->capture_default_str();
  command->add_flag("--all", a.all, "Recipes that are not about canning too");
  command->add_option("--rules", a.common.rules, "Folder or file of further rules (YAML)")
      ->type_name("PATH")
      ->allow_extra_args(false);
  command->callback([arguments, &status] { status = run(*arguments); });
}

}  // namespace sealworthy::cli
