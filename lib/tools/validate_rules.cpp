// Build-time program: runs every loader over the rules that were compiled in; a wrong row stops the build.
//   validate_rules FOLDER_OF_RULES
// Problems are printed as file:line:column: message, with the paths of the files that were compiled in.

#include <filesystem>
#include <iostream>
#include <span>
#include <vector>

#include "knowledge/embedded.hpp"
#include "yaml/document.hpp"

namespace {

using sealworthy::yaml::Document;
using Files = std::span<const std::pair<std::string_view, Document>>;

struct Problem {
  std::string_view file;
  sealworthy::yaml::Error error;
};

/// A loader reads the files that it knows and tells what is wrong with them.
using Loader = std::vector<Problem> (*)(Files);

/// Every loader of the library has its line here.
const std::vector<Loader> loaders = {};

}  // namespace

int main(int argc, char** argv) try {
  if (argc != 2) {
    std::cerr << "validate_rules FOLDER_OF_RULES\n";
    return 2;
  }
  const std::filesystem::path top = argv[1];
  const auto files = sealworthy::yaml::unpack(sealworthy::embedded_rules());
  if (!files) {
    std::cerr << "validate_rules: the rules compiled in are damaged\n";
    return 1;
  }
  bool good = true;
  for (const Loader loader : loaders)
    for (const auto& [file, error] : loader(*files)) {
      std::cerr << (top / file).string() << ':' << error.at.line << ':' << error.at.column << ": "
                << error.message << ' ' << error.suggestion << '\n';
      good = false;
    }
  return good ? 0 : 1;
} catch (const std::exception& problem) {
  std::cerr << "validate_rules: " << problem.what() << '\n';
  return 1;
}
