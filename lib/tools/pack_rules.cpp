// Build-time program: reads all YAML files under a folder and writes a C++ source that holds them packed.
//   pack_rules RULES_DIR OUTPUT.cpp
// A YAML error is printed as file:line:column: message and stops the build.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>

#include "yaml/document.hpp"

namespace {

namespace fs = std::filesystem;
using sealworthy::yaml::BadDocument;
using sealworthy::yaml::Document;
using NamedDocuments = std::vector<std::pair<std::string, Document>>;

std::vector<fs::path> yaml_files(const fs::path& folder) {
  std::vector<fs::path> files;
  if (fs::is_directory(folder))
    for (const auto& entry : fs::recursive_directory_iterator(folder))
      if (entry.is_regular_file() && entry.path().extension() == ".yaml") files.push_back(entry.path());
  std::sort(files.begin(), files.end(),
            [](const fs::path& a, const fs::path& b) { return a.generic_string() < b.generic_string(); });
  return files;
}

/// Adds the documents of a file; false when one is bad.
bool read_file(const fs::path& file, const std::string& name, NamedDocuments& documents) {
  std::ifstream in(file, std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(in), {}};
  if (!in) {
    std::cerr << file.string() << ":1:1: can't be read\n";
    return false;
  }
  bool good = true;
  for (auto& read : sealworthy::yaml::read_documents(text)) {
    if (const auto* bad = std::get_if<BadDocument>(&read)) {
      const auto& error = bad->error;
      std::cerr << file.string() << ':' << error.at.line << ':' << error.at.column << ": " << error.message
                << ' ' << error.suggestion << '\n';
      good = false;
    } else {
      documents.emplace_back(name, std::get<Document>(std::move(read)));
    }
  }
  return good;
}

/// A string literal: GCC and clang read a few megabytes of one in a fraction of a second, unlike an array of
/// numbers.
void write_literal(std::ostream& out, std::string_view bytes) {
  constexpr std::size_t line = 120;
  for (std::size_t begin = 0; begin < bytes.size(); begin += line) {
    out << '"';
    for (const char c : bytes.substr(begin, line)) {
      const auto byte = static_cast<unsigned char>(c);
      if (c == '"' || c == '\\' || c == '?')
        out << '\\' << c;
      else if (byte >= 0x20 && byte < 0x7F)
        out << c;
      else  // three octal digits: a digit that follows can't be taken for a part of it
        out << '\\' << static_cast<char>('0' + (byte >> 6U)) << static_cast<char>('0' + ((byte >> 3U) & 7U))
            << static_cast<char>('0' + (byte & 7U));
    }
    out << "\"\n";
  }
}

bool write_source(const fs::path& file, std::string_view bytes) {
  std::ofstream out(file, std::ios::binary);
  out << "#include \"knowledge/embedded.hpp\"\n\nnamespace {\nconst char bytes[] =\n";
  write_literal(out, bytes);
  out << ";\n}  // namespace\n\nstd::string_view sealworthy::embedded_rules() { return {bytes, sizeof bytes "
         "- 1}; }\n";
  out.close();
  return out.good();
}

}  // namespace

int main(int argc, char** argv) try {
  if (argc != 3) {
    std::cerr << "pack_rules RULES_DIR OUTPUT.cpp\n";
    return 2;
  }
  const fs::path folder = argv[1];
  NamedDocuments documents;
  bool good = true;
  for (const fs::path& file : yaml_files(folder)) {
    const std::string name = (folder.filename() / file.lexically_relative(folder)).generic_string();
    good = read_file(file, name, documents) && good;
  }
  if (!good) return 1;
  if (write_source(argv[2], sealworthy::yaml::pack(documents))) return 0;
  std::cerr << argv[2] << ": can't be written\n";
  return 1;
} catch (const std::exception& problem) {
  std::cerr << "pack_rules: " << problem.what() << '\n';
  return 1;
}
