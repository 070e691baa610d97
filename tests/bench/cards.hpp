#pragma once

#include <random>
#include <string>
#include <vector>

namespace bench {

/// Invented cards of about 400 bytes to 1.2 kB, always the same for a seed.
inline std::vector<std::string> cards(int n, unsigned seed = 1) {
  const std::vector<std::string> lines = {"14 lb green beans, trimmed, cut in 1-inch pieces",
                                          "each jar: 1 teaspoon canning salt",
                                          "4 1/2 cups peeled, cored, chopped tomatoes",
                                          "2 tbsp bottled lemon juice",
                                          "1 cup white vinegar (5%)",
                                          "{food: onion, amount: 2 cups, state: [chopped]}",
                                          "3 medium jalapeño peppers, seeded and chopped",
                                          "\"1/2 cup sugar: brown or white\"",
                                          "water",
                                          "salt to taste  # the cook's own"};
  const std::vector<std::string> steps = {"Boil five minutes, fill the jars, remove bubbles.",
                                          "Wipe the rims, put the lids on and tighten them fingertip tight.",
                                          "Process, turn off the heat, and let the pressure fall by itself.",
                                          "Cool for 12 to 24 hours and check the seals.",
                                          "Wash the jars; keep them hot until they are filled."};
  std::mt19937 random(seed);
  const auto up_to = [&](unsigned most) { return static_cast<int>(random() % most) + 1; };
  std::vector<std::string> cards;
  for (int i = 0; i < n; ++i) {
    std::string card =
        "recipe: Ridge road jars " + std::to_string(i) + "\nunits: us\nmakes: 7 quart jars\ningredients:\n";
    for (int k = up_to(12) + 1; k > 0; --k) card += "  - " + lines[random() % lines.size()] + "\n";
    card += "pack: raw\njars: quart\nheadspace: 1 inch\nprocess:\n  method: pressure canner\n  gauge: dial\n";
    card += "  pressure: 11 psi\n  time: 25 minutes\n  altitude: 0-2000 ft\nsteps:\n";
    for (int k = up_to(6) + 1; k > 0; --k) card += "  - " + steps[random() % steps.size()] + "\n";
    cards.push_back(card);
  }
  return cards;
}

}  // namespace bench
