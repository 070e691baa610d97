#include <doctest/doctest.h>

#include <sstream>
#include <vector>

#include "command/run.hpp"

using sealworthy::test::read_all;
using sealworthy::test::shell;

namespace {

struct Session {
  std::string command;
  std::string output;
  int line = 0;
};

/// The `$ ` lines of the README's console blocks with the output shown below each.
std::vector<Session> sessions(const std::string& markdown) {
  std::vector<Session> found;
  std::istringstream in(markdown);
  bool console = false;
  int number = 0;
  for (std::string line; std::getline(in, line);) {
    ++number;
    if (line.rfind("```", 0) == 0) {
      console = line == "```console";
    } else if (console && line.rfind("$ ", 0) == 0) {
      found.push_back({line.substr(2), "", number});
    } else if (console && !found.empty()) {
      found.back().output += line + "\n";
    }
  }
  return found;
}

}  // namespace

TEST_CASE("the README shows what the command really prints") {
  const auto all = sessions(read_all(SEALWORTHY_SOURCE_DIR "/README.md"));
  CHECK(all.size() >= 4);
  for (const auto& session : all) {
    CAPTURE(session.line);
    CAPTURE(session.command);
    const auto ran =
        shell("work=$(mktemp -d) && cp -r " SEALWORTHY_SOURCE_DIR "/sample-recipes $work && cd $work && " +
              session.command + "\ncd / && rm -rf $work");
    CHECK(ran.out + ran.err == session.output);
  }
}
