#include <random>

#include "reading.hpp"

using namespace sealworthy;
using namespace sealworthy::yaml;

namespace {

bool same(const Node& a, const Node& b) {
  if (a.kind != b.kind || a.quoted != b.quoted || a.at != b.at || a.text != b.text ||
      a.items.size() != b.items.size() || a.entries.size() != b.entries.size())
    return false;
  for (std::size_t i = 0; i < a.items.size(); ++i)
    if (!same(a.items[i], b.items[i])) return false;
  for (std::size_t i = 0; i < a.entries.size(); ++i) {
    const Entry& x = a.entries[i];
    const Entry& y = b.entries[i];
    if (x.key != y.key || x.key_at != y.key_at || !same(x.value, y.value)) return false;
  }
  return true;
}

std::vector<std::pair<std::string, Document>> several() {
  return {{"rules/a.yaml", good("a: [1, \"2\", ~, {b: c}]\nlong: |\n  " + std::string(300, 'x') + "\n")},
          {"rules/b.yaml", good("- &x {é: ½}\n- *x\n- []\n- {}\n- ''\n")},
          {"", good("text")}};
}

/// Touches every byte and node of what was unpacked.
std::size_t weight(const Node& n) {
  std::size_t sum = 1;
  for (const char c : n.text) sum += static_cast<unsigned char>(c);
  for (const Node& item : n.items) sum += weight(item);
  for (const Entry& e : n.entries) sum += e.key.size() + weight(e.value);
  return sum;
}

std::size_t weight(std::string_view bytes) {
  const auto documents = unpack(bytes);
  std::size_t sum = 0;
  if (documents)
    for (const auto& [name, document] : *documents) sum += name.size() + weight(document.root());
  return sum;
}

}  // namespace

TEST_CASE("a pack gives back what went in") {
  const auto documents = several();
  const std::string bytes = pack(documents);
  const auto back = unpack(bytes);
  REQUIRE(back.has_value());
  REQUIRE(back->size() == documents.size());
  for (std::size_t i = 0; i < documents.size(); ++i) {
    CHECK((*back)[i].first == documents[i].first);
    CHECK((*back)[i].second.number() == documents[i].second.number());
    CHECK(same((*back)[i].second.root(), documents[i].second.root()));
  }
  const std::string_view text = (*back)[2].second.root().text;
  CHECK(text.data() >= bytes.data());
  CHECK(text.data() < bytes.data() + bytes.size());
}

TEST_CASE("no documents pack too") {
  const auto back = unpack(pack({}));
  REQUIRE(back.has_value());
  CHECK(back->empty());
}

TEST_CASE("what is no pack is refused") {
  CHECK_FALSE(unpack("").has_value());
  CHECK_FALSE(unpack("recipe: beans\n").has_value());
  std::string bytes = pack(several());
  CHECK_FALSE(unpack(bytes + '\0').has_value());
  for (std::size_t n = 0; n < bytes.size(); ++n)
    CHECK_FALSE(unpack(std::string_view(bytes).substr(0, n)).has_value());
  bytes[6] = 2;  // another version
  CHECK_FALSE(unpack(bytes).has_value());
}

TEST_CASE("a pack that claims too much is refused before memory is taken for it") {
  const std::string head("SWPACK\x01\x01\x00\x01", 10);
  const std::string huge("\xFF\xFF\xFF\xFF\xFF\xFF\xFF\x7F", 8);
  CHECK_FALSE(unpack(head + std::string("\x02\x01\x01", 3) + huge).has_value());  // items
  CHECK_FALSE(unpack(head + std::string("\x03\x01\x01", 3) + huge).has_value());  // entries
  CHECK_FALSE(unpack(head + std::string("\x01\x01\x01", 3) + huge).has_value());  // text
  std::string deep = head;
  for (int i = 0; i < 1'000; ++i) deep += std::string("\x02\x01\x01\x01", 4);
  CHECK_FALSE(unpack(deep).has_value());
}

TEST_CASE("a pack damaged anywhere never does harm") {
  const std::string bytes = pack(several());
  std::mt19937 random(20'260'314);
  std::size_t sum = 0;
  for (int round = 0; round < 20'000; ++round) {
    std::string damaged = bytes;
    for (unsigned n = random() % 4 + 1; n > 0; --n)
      damaged[random() % damaged.size()] = static_cast<char>(random());
    sum += weight(damaged);
  }
  CHECK(sum > 0);
}
