// Build-time program: runs every loader over the rules that were compiled in; a wrong row stops the build.
//   validate_rules FOLDER_OF_RULES
// Problems are printed as file:line:column: message, with the paths of the files that were compiled in.

#include <filesystem>
#include <iostream>
#include <span>
#include <vector>

#include "knowledge/embedded.hpp"
#include "knowledge/knowledge.hpp"
#include "yaml/document.hpp"

namespace {

using namespace sealworthy;

/// A loader reads the documents that it knows and tells what is wrong with them.
using Loader = void (*)(std::span<const knowledge::NamedDocument>, std::vector<foods::LoadError>&);

/// Every loader of the library has its line here.
const std::vector<Loader> loaders = {
    +[](std::span<const knowledge::NamedDocument> documents, std::vector<foods::LoadError>& errors) {
      knowledge::Knowledge::build(documents, errors);
    },
};

}  // namespace

int main(int argc, char** argv) try {
  if (argc != 2) {
    std::cerr << "validate_rules FOLDER_OF_RULES\n";
    return 2;
  }
  const auto packed = yaml::unpack(embedded_rules());
  if (!packed) {
    std::cerr << "validate_rules: the rules compiled in are damaged\n";
    return 1;
  }
  std::vector<knowledge::NamedDocument> documents;
  for (const auto& [file, document] : *packed) documents.push_back({file, document});
  std::vector<foods::LoadError> errors;
  for (const Loader load : loaders) load(documents, errors);
  const std::filesystem::path top = argv[1];
  for (const auto& [file, error] : errors)
    std::cerr << (top / file).string() << ':' << error.at.line << ':' << error.at.column << ": "
              << error.message << ' ' << error.suggestion << '\n';
  return errors.empty() ? 0 : 1;
} catch (const std::exception& problem) {
  std::cerr << "validate_rules: " << problem.what() << '\n';
  return 1;
}
