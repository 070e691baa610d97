// Writes the cards of cards.hpp as NDJSON, a card a line, for measuring the command: write_lines FILE NUMBER
#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>
#include <variant>

#include "cards.hpp"
#include "yaml/document.hpp"

namespace {

using Json = nlohmann::ordered_json;
using sealworthy::yaml::Node;

Json json_of(const Node& node) {
  if (node.is_scalar()) return Json(node.text);
  if (node.is_null()) return nullptr;
  Json out = node.is_map() ? Json::object() : Json::array();
  for (const Node& item : node.items) out.push_back(json_of(item));
  for (const auto& entry : node.entries) out[std::string(entry.key)] = json_of(entry.value);
  return out;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::cerr << "write_lines FILE NUMBER\n";
    return 2;
  }
  std::ofstream out(argv[1]);
  const int number = std::atoi(argv[2]);
  constexpr int part = 10000;  // so that a million need no memory
  for (int written = 0; written < number; written += part) {
    for (const auto& card :
         bench::cards(std::min(part, number - written), static_cast<unsigned>(written) + 1)) {
      const auto read = sealworthy::yaml::read_documents(card);
      out << json_of(std::get<sealworthy::yaml::Document>(read.at(0)).root()).dump() << '\n';
    }
  }
  return out.good() ? 0 : 1;
}
