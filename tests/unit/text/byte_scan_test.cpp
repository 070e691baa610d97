#include "text/byte_scan.hpp"

#include <doctest/doctest.h>

#include <string>

TEST_CASE("words are found whole, in either case, with any blank in a phrase") {
  sealworthy::text::ByteScan scan;
  scan.add("jar");
  scan.add("water bath");
  for (const std::string_view yes : {"jar", "A JAR.", "x<b>Jar</b>", "5jar", "water bath", "Water-Bath",
                                     "water\n  bath!", "water&nbsp;bath",
                                     "water\xC2\xA0"
                                     "bath",
                                     "jarring water bath", "{\"jar\":1}"})
    CHECK_MESSAGE(scan.finds(yes), yes);
  for (const std::string_view no : {"", "ja", "jars", "ajar", "jarring", "waterbath", "water", "water bat",
                                    "water bathe", "water &nbsp", "bath"})
    CHECK_MESSAGE(!scan.finds(no), no);
  CHECK(scan.finds(std::string(100000, 'j') + " jar"));
  CHECK_FALSE(sealworthy::text::ByteScan().finds("jar"));
}
