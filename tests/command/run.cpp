#include "command/run.hpp"

#include <sys/wait.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace sealworthy::test {

namespace fs = std::filesystem;

std::string read_all(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

Folder::Folder() {
  std::string name = (fs::temp_directory_path() / "sealworthy-XXXXXX").string();
  if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder for the test");
  path_ = name;
}

Folder::~Folder() {
  std::error_code ignored;
  fs::remove_all(path_, ignored);
}

std::string Folder::write(const std::string& name, const std::string& text) const {
  const auto path = fs::path(path_) / name;
  fs::create_directories(path.parent_path());
  std::ofstream(path, std::ios::binary) << text;
  return path.string();
}

Ran shell(const std::string& text, const std::string& input) {
  const Folder folder;
  const auto in = folder.write("in", input);
  const auto script = folder.write("script", text);
  const auto command = "PATH=\"" + fs::path(SEALWORTHY_COMMAND).parent_path().string() + ":$PATH\" bash " +
                       script + " < " + in + " > " + folder.path() + "/out 2> " + folder.path() + "/err";
  const int status = std::system(command.c_str());
  Ran ran;
  ran.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  ran.out = read_all(folder.path() + "/out");
  ran.err = read_all(folder.path() + "/err");
  return ran;
}

Ran run(const std::string& arguments, const std::string& input) {
  return shell("exec sealworthy " + arguments, input);
}

}  // namespace sealworthy::test
