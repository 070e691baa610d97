#include <doctest/doctest.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <vector>

#include "command/cards.hpp"
#include "command/run.hpp"

using sealworthy::test::beans;
using sealworthy::test::Folder;
using sealworthy::test::read_all;
using sealworthy::test::replaced;
using sealworthy::test::shell;
using sealworthy::test::wash_boiler;

namespace {

namespace fs = std::filesystem;

struct CachedSite {
  Folder folder;
  std::string today = "2026-08-31";

  CachedSite() {
    for (int i = 0; i < 40; ++i)
      card(i, replaced(i % 3 == 0 ? wash_boiler() : beans, "Hollow Farm", "Farm " + std::to_string(i)));
  }
  void card(int i, const std::string& text) const {
    folder.write("cards/" + std::to_string(i) + ".yaml", text);
  }
  sealworthy::test::Ran check(const std::string& arguments) const {
    return shell("cd " + folder.path() + " && sealworthy check --format json --today " + today + " " +
                 arguments + " cards");
  }
  [[nodiscard]] std::vector<fs::path> packs() const {
    std::vector<fs::path> found;
    for (const auto& entry : fs::directory_iterator(folder.path() + "/cache"))
      if (entry.path().extension() == ".pack") found.push_back(entry.path());
    return found;
  }
  /// Whether a run had to check anything: what it checks it adds to the cache as a new pack.
  bool checks_anything(const std::string& arguments = {}) const {
    const auto before = packs().size();
    const auto cached = check("--cache cache " + arguments);
    CHECK(cached.status != 2);
    CHECK(cached.out == check(arguments).out);
    return packs().size() != before;
  }
};

}  // namespace

TEST_CASE("the cache: the same report and status, and nothing is checked twice") {
  const CachedSite site;
  const auto plain = site.check("");
  const auto cold = site.check("--cache cache");
  CHECK(cold.out == plain.out);
  CHECK(cold.status == plain.status);
  CHECK(site.packs().size() == 1);
  const auto warm = site.check("--cache cache");
  CHECK(warm.out == plain.out);
  CHECK(warm.status == plain.status);
  CHECK(warm.err.empty());
  CHECK(site.packs().size() == 1);
}

TEST_CASE("the cache follows content, not names or times") {
  const CachedSite site;
  site.check("--cache cache");
  fs::rename(site.folder.path() + "/cards/1.yaml", site.folder.path() + "/cards/moved.yaml");
  CHECK_FALSE(site.checks_anything());
  site.card(2, beans + "lids: new\n");
  CHECK(site.checks_anything());
  CHECK_FALSE(site.checks_anything());
}

TEST_CASE("another kitchen, altitude or folder of rules is checked anew") {
  const CachedSite site;
  site.check("--cache cache");
  CHECK(site.checks_anything("--altitude 5000ft"));
  CHECK_FALSE(site.checks_anything("--altitude 5000ft"));
  site.folder.write("cards/kitchen.yaml", "kitchen: Hollow Farm\naltitude: 500 ft\n");
  CHECK(site.checks_anything());
  CHECK_FALSE(site.checks_anything());
  site.folder.write("cards/kitchen.yaml", "kitchen: Hollow Farm\naltitude: 5,000 ft\n");
  CHECK(site.checks_anything());
  site.folder.write("rules/sources.yaml", "sources: []\n");
  const auto with_rules = site.check("--rules rules");
  if (with_rules.status != 2) CHECK(site.checks_anything("--rules rules"));
}

TEST_CASE("what --explain, --against and a page add is kept too, each for itself") {
  const CachedSite site;
  site.check("--cache cache");
  for (const std::string options :
       {"--explain", "--against beans-snap-and-italian-pieces", "--against beets-whole-cubed-or-sliced",
        "--all", "--explain --against beans-snap-and-italian-pieces"}) {
    CAPTURE(options);
    CHECK(site.checks_anything(options));
    CHECK_FALSE(site.checks_anything(options));
  }
  const auto page = [&](const std::string& more) {
    return shell("cd " + site.folder.path() +
                 " && sealworthy check --explain --format html --today 2026-08-31 " + more + " cards")
        .out;
  };
  CHECK(page("--cache cache") == page(""));
  CHECK(page("--cache cache") == page(""));
}

TEST_CASE("the day counts where a date stands in the card or the kitchen, and nowhere else") {
  CachedSite site;
  site.check("--cache cache");
  site.today = "2027-08-31";
  CHECK_FALSE(site.checks_anything());
  site.card(
      3, wash_boiler() + "accept:\n  - {rule: headspace-too-little, because: a trial, until: 2026-12-31}\n");
  CHECK(site.checks_anything());
  CHECK_FALSE(site.checks_anything());
  site.today = "2026-08-31";
  CHECK(site.checks_anything());
  CHECK_FALSE(site.checks_anything());
}

TEST_CASE("damaged, cut off and foreign files in the cache are passed over") {
  const CachedSite site;
  const auto plain = site.check("");
  site.check("--cache cache");
  const auto pack = site.packs().front().string();
  const auto whole = read_all(pack);
  for (std::size_t at = 0; at < whole.size(); at += whole.size() / 25 + 1) {
    CAPTURE(at);
    auto damaged = whole;
    damaged[at] = static_cast<char>(damaged[at] ^ 0x55);
    fs::remove_all(site.folder.path() + "/cache");
    site.folder.write("cache/1.pack", damaged);
    CHECK(site.check("--cache cache").out == plain.out);
    fs::remove_all(site.folder.path() + "/cache");
    site.folder.write("cache/1.pack", whole.substr(0, at));
    CHECK(site.check("--cache cache").out == plain.out);
  }
  site.folder.write("cache/notes.pack", "not a pack");
  CHECK(site.check("--cache cache").out == plain.out);
  CHECK(fs::exists(site.folder.path() + "/cache/notes.pack"));
}

TEST_CASE("runs at the same time share a cache, and a killed one leaves it whole") {
  const CachedSite site;
  const auto plain = site.check("");
  const auto ran =
      shell("cd " + site.folder.path() +
            "\nfor i in 1 2 3 4 5 6; do sealworthy check --cache cache --format json --today 2026-08-31 "
            "cards > out.$i & done; wait\n"
            "timeout -s KILL 0.02 sealworthy check --cache cache --altitude 3000ft cards > /dev/null\n"
            "cat out.1; for i in 2 3 4 5 6; do cmp out.1 out.$i || echo differs; done");
  CHECK(ran.out == plain.out);
  CHECK(site.check("--cache cache").out == plain.out);
}

TEST_CASE("many packs become one") {
  const CachedSite site;
  for (int i = 0; i < 25; ++i) {
    site.card(7, replaced(beans, "Hollow Farm", "Edition " + std::to_string(i)));
    site.check("--cache cache");
    CHECK(site.packs().size() <= 9);
  }
  CHECK_FALSE(site.checks_anything());
}

TEST_CASE("a cache that can't be written is a warning and no more") {
  const CachedSite site;
  site.folder.write("file", "in the way");
  const auto plain = site.check("");
  const auto ran = site.check("--cache file/cache");
  CHECK(ran.out == plain.out);
  CHECK(ran.status == plain.status);
  CHECK(ran.err.find("cache can't be written") != std::string::npos);
}
