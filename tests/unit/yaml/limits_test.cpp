#include <chrono>

#include "reading.hpp"

using namespace sealworthy;
using namespace sealworthy::yaml;

namespace {

std::string repeated(std::string_view part, std::size_t times) {
  std::string out;
  for (std::size_t i = 0; i < times; ++i) out += part;
  return out;
}

/// Nine lists, each of nine times the one before: 9^9 values when followed.
std::string alias_bomb() {
  std::string text = "a0: &a0 x\n";
  for (int i = 1; i <= 9; ++i) {
    const std::string before = "*a" + std::to_string(i - 1);
    text += "a" + std::to_string(i) + ": &a" + std::to_string(i) + " [" + before +
            repeated(", " + before, 8) + "]\n";
  }
  return text;
}

}  // namespace

TEST_CASE("depth: 64 are read, 65 are not") {
  CHECK(good(repeated("[", 64) + repeated("]", 64)).root().is_sequence());
  CHECK(bad(repeated("[", 65) + repeated("]", 65)).at == Position{1, 65});
  CHECK(good(repeated("- ", 64) + "x").root().is_sequence());
  CHECK(bad(repeated("- ", 65) + "x").at == Position{1, 129});
  CHECK(bad("a: [[1]]", {.depth = 2}).at == Position{1, 5});
}

TEST_CASE("depth counts what an alias brings along") {
  const std::string forty = repeated("[", 40) + repeated("]", 40);
  CHECK(bad("a: &x " + forty + "\nb: " + repeated("[", 30) + "*x" + repeated("]", 30)).at == Position{2, 34});
  CHECK(good("a: &x " + forty + "\nb: " + repeated("[", 23) + "*x" + repeated("]", 23)).root().is_map());
}

TEST_CASE("an alias bomb is refused at the alias that goes too far") {
  const Error error = bad(alias_bomb());
  CHECK(error.at.line == 7);
  CHECK(error.message.find("more than 200000 values") != std::string::npos);
}

TEST_CASE("nodes: the limit is read, one more is not") {
  CHECK(read_documents("[a, b, c]", {.nodes = 4}).size() == 1);
  CHECK(bad("[a, b, c]", {.nodes = 3}).at == Position{1, 8});
  CHECK(bad("a: &x [b, c]\nd: *x\n", {.nodes = 6}).at == Position{2, 4});
}

TEST_CASE("size: 1 MiB is read, a byte more is not") {
  const std::string full = "a: " + std::string((1U << 20U) - 3, 'b');
  CHECK(good(full).root().find("a")->text.size() == full.size() - 3);
  const Error error = bad(full + "b");
  CHECK(error.at == Position{1, 1});
  CHECK(error.message.find("1048577 bytes") != std::string::npos);
}

TEST_CASE("hostile texts of 1 MiB are refused or read in time that goes with their size") {
  constexpr std::size_t size = 1U << 20U;
  const auto full = [](std::string_view part) { return repeated(part, size / part.size()); };
  const std::string texts[] = {full("["),
                               full("{"),
                               full("[a,"),
                               full("- "),
                               full("-\n"),
                               full("? "),
                               full(": "),
                               full("\"\" "),
                               full("'' "),
                               full("!"),
                               full("&a "),
                               full("*a "),
                               full("&a"),
                               full("%"),
                               full("%a\n"),
                               full("\n"),
                               full("#"),
                               full("# "),
                               full("a: "),
                               full("a:\n"),
                               full("a\n"),
                               full("\t"),
                               full("\\"),
                               full("|\n"),
                               full("> "),
                               full("---"),
                               full("--- a\n"),
                               full("...\n"),
                               full("}"),
                               full(","),
                               full("½ "),
                               full("a\r"),
                               full("a: &b [*b]\n"),
                               full("- a: 1\n"),
                               full("[[],"),
                               "a: " + full(" "),
                               "a: \"" + full("\n"),
                               "a: |\n" + full(" \n").substr(9)};
  for (const std::string& text : texts) {
    CAPTURE(text.substr(0, 8));
    const auto begin = std::chrono::steady_clock::now();
    read_documents(text);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
    CHECK(took.count() < 10);
  }
}

TEST_CASE("repeated keys are found in a map of many") {
  std::string text;
  for (int i = 0; i < 20'000; ++i) text += "key" + std::to_string(i) + ": " + std::to_string(i) + "\n";
  CHECK(good(text).root().entries.size() == 20'000);
  const Error error = bad(text + "key7: again\n");
  CHECK(error.at == Position{20'001, 1});
  CHECK(error.message.find("line 8") != std::string::npos);
}
