#pragma once

/// Runs the built command as a user would, with its streams apart.

#include <string>

namespace sealworthy::test {

struct Ran {
  int status = -1;  ///< exit status; 128 + signal if a signal ended it
  std::string out;
  std::string err;
};

/// `arguments` is the shell text after the name of the command.
Ran run(const std::string& arguments, const std::string& input = {});
/// Any shell text; `sealworthy` is on the PATH.
Ran shell(const std::string& text, const std::string& input = {});

/// A fresh folder that is removed with the object.
class Folder {
 public:
  Folder();
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder();
  [[nodiscard]] const std::string& path() const { return path_; }
  /// Writes a file below the folder, making folders on the way; gives its whole path.
  std::string write(const std::string& name, const std::string& text) const;

 private:
  std::string path_;
};

std::string read_all(const std::string& path);

}  // namespace sealworthy::test
