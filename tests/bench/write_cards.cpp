// Writes the cards of cards.hpp as files, for measuring the command: write_cards FOLDER NUMBER
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>

#include "cards.hpp"

int main(int argc, char** argv) {
  if (argc != 3) {
    std::cerr << "write_cards FOLDER NUMBER\n";
    return 2;
  }
  const std::filesystem::path folder = argv[1];
  constexpr int per_folder = 500;
  const auto cards = bench::cards(std::atoi(argv[2]));
  for (std::size_t i = 0; i < cards.size(); ++i) {
    const auto below = folder / std::to_string(i / per_folder);
    std::filesystem::create_directories(below);
    std::ofstream(below / (std::to_string(i) + ".yaml")) << cards[i];
  }
  return 0;
}
