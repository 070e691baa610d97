// Writes invented web pages of some 60 kB, one in ten with a canning recipe as JSON-LD, one in a hundred with
// one in its text alone: write_pages FOLDER NUMBER
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <random>
#include <string>
#include <vector>

namespace {

constexpr const char* linked =
    R"(<script type="application/ld+json">{"@context": "https://schema.org", "@type": "Recipe",
"name": "Beans", "recipeIngredient": ["9 lb green beans, trimmed, cut in 1-inch pieces", "boiling water"],
"recipeInstructions": ["Pack the raw beans into hot pint jars. Cover with boiling water, leaving 1 inch headspace.",
"Process pints 20 minutes at 11 psi in a dial-gauge pressure canner at 0 to 2,000 ft."]}</script>
)";
constexpr const char* told =
    R"(<h2>Beans</h2><p><b>Ingredients</b></p><ul><li>9 lb green beans, trimmed, cut in 1-inch pieces
<li>boiling water</ul><p><b>Directions</b></p><p>Pack the raw beans into hot pint jars. Cover with boiling water, leaving
1 inch headspace.<p>Process pints 20 minutes at 11 psi in a dial-gauge pressure canner at 0 to 2,000 ft.</p>
)";

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::cerr << "write_pages FOLDER NUMBER\n";
    return 2;
  }
  const std::vector<std::string> words = {
      "the",   "of",   "and",  "kitchen", "in",    "summer", "you",   "that", "with",  "they",
      "bread", "this", "have", "from",    "cake",  "by",     "hot",   "word", "but",   "salt",
      "some",  "we",   "can",  "out",     "there", "were",   "all",   "your", "when",  "up",
      "use",   "how",  "said", "an",      "each",  "she",    "which", "do",   "their", "time",
      "if",    "will", "way",  "about",   "many",  "then",   "them",  "would"};
  std::mt19937 random(7);
  const auto filler = [&](std::size_t size) {
    std::string text;
    while (text.size() < size) {
      text += "<div class=\"post-" + std::to_string(random() % 1000) + "\"><p>";
      for (int i = 0; i < 40; ++i) text += words[random() % words.size()] + " ";
      text += "</p><a href=\"/a/" + std::to_string(random() % 10000) + ".html\"><img src=\"/i/" +
              std::to_string(random() % 10000) + ".jpg\" alt=\"" + words[random() % words.size()] +
              "\"></a></div>\n";
    }
    return text;
  };
  std::vector<std::string> halves;
  for (int i = 0; i < 40; ++i) halves.push_back(filler(29000));
  const std::filesystem::path folder = argv[1];
  for (int i = 0; i < std::atoi(argv[2]); ++i) {
    const auto below = folder / std::to_string(i / 500);
    std::filesystem::create_directories(below);
    std::ofstream(below / (std::to_string(i) + ".html"))
        << "<!DOCTYPE html><html><head><title>Page " << i << "</title></head><body>"
        << halves[random() % halves.size()]
        << (i % 10 == 0    ? linked
            : i % 100 == 5 ? told
                           : "")
        << halves[random() % halves.size()] << "</body></html>\n";
  }
  return 0;
}
