#include <fmt/format.h>

#include <algorithm>
#include <sealworthy/report.hpp>

#include "option_table.hpp"

namespace sealworthy::cli {
namespace {

/// Text in roff: hyphens that are copied from a terminal, no line that looks like a request.
std::string roff(std::string_view text) {
  std::string out;
  bool line_start = true;
  for (const char c : text) {
    if (line_start && (c == '.' || c == '\'')) out += "\\&";
    if (c == '-')
      out += "\\-";
    else if (c == '\\')
      out += "\\e";
    else
      out += c;
    line_start = c == '\n';
  }
  return out;
}

/// Line breaks of the help are for its width; a man page sets its own.
std::string flowing(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ' ');
  return roff(text);
}

std::string tag_of(const OptionRow& option) {
  std::string tag;
  for (const auto& name : option.names) tag += (tag.empty() ? "\\fB" : ", \\fB") + roff(name) + "\\fR";
  if (tag.empty()) tag = "\\fI" + roff(option.positional) + "\\fR";
  if (option.choices.empty()) {
    if (!option.value.empty() && !option.names.empty()) tag += " \\fI" + roff(option.value) + "\\fR";
  } else {
    tag += " " + roff(fmt::format("{}", fmt::join(option.choices, "|")));
  }
  return tag;
}

std::string options_of(const CommandRow& command) {
  std::string out;
  for (const auto& option : command.options) {
    out += ".TP\n" + tag_of(option) + "\n" + flowing(option.description);
    if (!option.standard.empty()) out += roff(" (" + option.standard + " when not given)");
    out += ".\n";
  }
  return out;
}

std::string synopsis_of(const CommandRow& command) {
  auto line = fmt::format(".B sealworthy {}\n[\\fIOPTION\\fR]...", roff(command.name));
  for (const auto& option : command.options)
    if (!option.positional.empty()) line += fmt::format(" \\fI{}\\fR...", roff(option.positional));
  return line + "\n.br\n";
}

}  // namespace

std::string man_page(const OptionTable& table) {
  auto out = fmt::format(".TH SEALWORTHY 1 \"\" \"sealworthy {}\" \"User Commands\"\n", version());
  const auto& about = table.program.description;
  out += ".SH NAME\nsealworthy \\- checks home\\-canning recipes against published, tested processes\n";
  out += ".SH SYNOPSIS\n";
  for (const auto& command : table.commands) out += synopsis_of(command);
  out += ".SH DESCRIPTION\n" + flowing(about) + "\n";
  out += ".SH OPTIONS\n" + options_of(table.program);
  out += ".SH COMMANDS\n";
  for (const auto& command : table.commands) {
    out += ".SS " + roff(command.name) + "\n" + flowing(command.description) + ".\n" + options_of(command);
    if (!command.footer.empty()) out += ".PP\n" + flowing(command.footer) + "\n";
  }
  out +=
      ".SH EXIT STATUS\n"
      ".TP\n0\nNothing at or above \\fB\\-\\-fail\\-on\\fR was found.\n"
      ".TP\n1\nSomething was, or with \\fB\\-\\-require tested\\fR a card is not tested.\n"
      ".TP\n2\nA recipe, a file or an argument could not be read; the others were still checked.\n";
  out +=
      ".SH FILES\n.TP\nkitchen.yaml\nBeside the cards or in a folder above them: the altitude and the "
      "canners.\n";
  return out;
}

}  // namespace sealworthy::cli
