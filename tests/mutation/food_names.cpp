#include <filesystem>
#include <fstream>
#include <sstream>
#include <variant>

#include "card_writer.hpp"
#include "yaml/document.hpp"

namespace sealworthy::mutation {

std::map<std::string, std::vector<std::string>> names_of_foods() {
  std::map<std::string, std::vector<std::string>> out;
  const std::filesystem::path folder = std::string(SEALWORTHY_SOURCE_DIR) + "/rules/foods";
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    std::ifstream file(entry.path());
    std::stringstream text;
    text << file.rdbuf();
    const std::string kept = text.str();
    for (const auto& read : yaml::read_documents(kept)) {
      const auto* document = std::get_if<yaml::Document>(&read);
      const auto* foods = document == nullptr ? nullptr : document->root().find("foods");
      if (foods == nullptr) continue;
      for (const auto& food : foods->items)
        if (const auto* names = food.find("names"))
          for (const auto& name : names->items)
            out[std::string(food.find("id")->text)].emplace_back(name.text);
    }
  }
  return out;
}

}  // namespace sealworthy::mutation
