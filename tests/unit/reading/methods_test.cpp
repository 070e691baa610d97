#include "reading/methods.hpp"

#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

using namespace sealworthy;
using reading::MethodKind;

namespace {

std::string read_file(const std::string& path) {
  std::ifstream in(std::string(SEALWORTHY_SOURCE_DIR) + "/" + path);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

const reading::Methods& methods() {
  static const auto loaded = [] {
    static const auto documents = yaml::read_documents(read_file("rules/methods.yaml"));
    reading::Methods m;
    std::vector<foods::LoadError> errors;
    m.load("rules/methods.yaml", std::get<yaml::Document>(documents.at(0)), errors);
    for (const auto& e : errors) MESSAGE(e.error.at.line << ": " << e.error.message);
    REQUIRE(errors.empty());
    return m;
  }();
  return loaded;
}

std::string id(std::string_view words) {
  const auto* method = methods().find(words);
  return method == nullptr ? "" : method->id;
}

}  // namespace

TEST_CASE("trade words name a method, whatever their case, hyphens and filler") {
  CHECK(id("boiling water") == "boiling-water");
  CHECK(id("Boiling-Water Bath") == "boiling-water");
  CHECK(id("BWB") == "boiling-water");
  CHECK(id("hot water bath") == "boiling-water");
  CHECK(id("process in a boiling water canner") == "boiling-water");
  CHECK(id("boiling water in a dutch oven") == "boiling-water");
  CHECK(id("atmospheric steam canner") == "steam");
  CHECK(id("steam") == "steam");
  CHECK(id("steam pressure canner") == "pressure");
  CHECK(id("pressure canner") == "pressure");
  CHECK(id("pressure cooker") == "pressure");
  CHECK(id("low-temperature pasteurization") == "low-temperature-pasteurization");
}

TEST_CASE("a word for the gauge says it") {
  REQUIRE(methods().find("weighted-gauge pressure canner") != nullptr);
  CHECK(methods().find("weighted-gauge pressure canner")->gauge == recipe::Gauge::weighted);
  CHECK(methods().find("dial gauge pressure canner")->gauge == recipe::Gauge::dial);
  CHECK_FALSE(methods().find("pressure canner")->gauge.has_value());
}

TEST_CASE("ways that are no canning method are known by name") {
  for (const auto* words : {"oven", "in the oven", "microwave", "dishwasher", "crockpot",
                            "electric pressure cooker", "sun", "open kettle", "vacuum sealer"}) {
    CAPTURE(words);
    REQUIRE(methods().find(words) != nullptr);
    CHECK(methods().find(words)->kind == MethodKind::not_accepted);
  }
}

TEST_CASE("a slip of one letter is forgiven, short words and other words are not") {
  CHECK(id("presure canner") == "pressure");
  CHECK(id("boiling watter") == "boiling-water");
  CHECK(id("over") == "");
  CHECK(id("son") == "");
  CHECK(id("magic") == "");
  CHECK(id("") == "");
}

TEST_CASE("words that mean two kinds of method mean none") {
  CHECK(id("boiling water or pressure canner") == "");
  CHECK(id("oven then water bath") == "");
}
