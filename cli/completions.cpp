#include <fmt/format.h>

#include <algorithm>

#include "option_table.hpp"

namespace sealworthy::cli {
namespace {

std::string names_of(const CommandRow& command) {
  std::string out;
  for (const auto& option : command.options)
    for (const auto& name : option.names) out += (out.empty() ? "" : " ") + name;
  return out;
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  return fmt::format("{}", fmt::join(words, between));
}

bool takes_path(const OptionRow& option) {
  const auto& kind = option.positional.empty() ? option.value : option.positional;
  return option.choices.empty() &&
         (kind.find("FILE") != std::string::npos || kind == "PATH" || kind == "FOLDER" || kind == "PART");
}

/// For single quotes of a shell, on one line.
std::string single_quoted(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '\'')
      out += "'\\''";
    else
      out += c == '\n' ? ' ' : c;
  }
  return out;
}

/// Within zsh's `[...]` brackets and colon-separated parts.
std::string zsh_text(std::string_view text) {
  std::string out;
  for (const char c : single_quoted(text)) {
    if (c == '[' || c == ']' || c == ':') out += '\\';
    out += c;
  }
  return out;
}

std::string zsh_action(const OptionRow& option) {
  if (!option.choices.empty()) return "(" + joined(option.choices, " ") + ")";
  return takes_path(option) ? "_files" : " ";
}

}  // namespace

std::string bash_completions(const OptionTable& table) {
  std::string commands;
  std::string cases;
  std::string values;
  for (const auto& command : table.commands) {
    commands += (commands.empty() ? "" : " ") + command.name;
    cases += fmt::format("    {}) words='{}' ;;\n", command.name, names_of(command));
    for (const auto& option : command.options) {
      if (option.names.empty() || option.value.empty()) continue;
      for (const auto& name : option.names)
        values += fmt::format("    {},{}) words='{}'; files={} ;;\n", command.name, name,
                              joined(option.choices, " "), takes_path(option) ? 1 : 0);
    }
  }
  return fmt::format(R"(# bash completion for sealworthy
_sealworthy() {{
  local now=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}} command=${{COMP_WORDS[1]}}
  local words='' files=''
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    mapfile -t COMPREPLY < <(compgen -W '{} {}' -- "$now")
    return
  fi
  case "$command,$before" in
{}  esac
  if [ -z "$files" ]; then
    if [[ $now != -* ]]; then
      mapfile -t COMPREPLY < <(compgen -f -- "$now")
      return
    fi
    case "$command" in
{}    esac
  fi
  mapfile -t COMPREPLY < <(compgen -W "$words" -- "$now")
  if [ "$files" = 1 ]; then mapfile -t COMPREPLY < <(compgen -f -- "$now"); fi
}}
complete -o filenames -F _sealworthy sealworthy
)",
                     commands, names_of(table.program), values, cases);
}

std::string zsh_completions(const OptionTable& table) {
  std::string commands;
  std::string cases;
  for (const auto& command : table.commands) {
    commands += fmt::format("    '{}:{}'\n", command.name, zsh_text(command.description));
    cases += fmt::format("    {}) _arguments", command.name);
    for (const auto& option : command.options) {
      for (const auto& name : option.names) {
        cases += fmt::format(" \\\n      '*{}[{}]", name, zsh_text(option.description));
        if (!option.value.empty()) cases += fmt::format(":{}:{}", zsh_text(option.value), zsh_action(option));
        cases += "'";
      }
      if (!option.positional.empty())
        cases += fmt::format(" \\\n      '*:{}:{}'", zsh_text(option.positional), zsh_action(option));
    }
    cases += " ;;\n";
  }
  return fmt::format(R"(#compdef sealworthy
_sealworthy() {{
  local -a commands
  commands=(
{}  )
  if (( CURRENT == 2 )); then
    _describe command commands
    return
  fi
  local command=$words[2]
  shift words
  (( CURRENT-- ))
  case $command in
{}  esac
}}
_sealworthy "$@"
)",
                     commands, cases);
}

std::string fish_completions(const OptionTable& table) {
  std::string out = "# fish completion for sealworthy\n";
  for (const auto& command : table.commands)
    out += fmt::format("complete -c sealworthy -f -n __fish_use_subcommand -a {} -d '{}'\n", command.name,
                       single_quoted(command.description));
  for (const auto& command : table.commands) {
    for (const auto& option : command.options) {
      const auto where =
          fmt::format("complete -c sealworthy -n '__fish_seen_subcommand_from {}'", command.name);
      if (!option.positional.empty()) {
        out += where + (takes_path(option) ? " -F\n" : " -f\n");
        continue;
      }
      auto line = where;
      for (const auto& name : option.names)
        line += name.starts_with("--") ? " -l " + name.substr(2) : " -s " + name.substr(1);
      if (!option.choices.empty())
        line += " -x -a '" + joined(option.choices, " ") + "'";
      else if (!option.value.empty())
        line += takes_path(option) ? " -r -F" : " -x";
      out += line + " -d '" + single_quoted(option.description) + "'\n";
    }
  }
  return out;
}

}  // namespace sealworthy::cli
