#include "whole_files.hpp"

#include <cerrno>
#include <fcntl.h>
#include <system_error>
#include <unistd.h>
#include <utility>

#include "noonleaf/error.hpp"

namespace noonleaf::cli {
namespace {

namespace fs = std::filesystem;

constexpr mode_t usual_permissions = 0666;  // the umask takes off what the person wants off

/// Throws    std::system_error with the reason, as the last call of the system left it
[[noreturn]] void give_up() { throw std::system_error(errno, std::generic_category()); }

/// A descriptor that is closed at the end.
class OpenFile {
 public:
  OpenFile(const fs::path& path, int flags) : descriptor_(::open(path.c_str(), flags, usual_permissions)) {
    if (descriptor_ < 0) give_up();
  }
  ~OpenFile() { ::close(descriptor_); }
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  int descriptor() const { return descriptor_; }

 private:
  int descriptor_;
};

void write_to_disk(const fs::path& path, std::string_view text) {
  const OpenFile file(path, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC);
  while (!text.empty()) {
    const ssize_t written = ::write(file.descriptor(), text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) give_up();
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  if (::fsync(file.descriptor()) != 0) give_up();
}

/// A new name is on the disk only when its folder is. Where that cannot be done the files are written all the same.
void sync_folder_of(const fs::path& path) {
  const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
  const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor < 0) return;
  ::fsync(descriptor);
  ::close(descriptor);
}

fs::path beside(fs::path wanted) {
  wanted += ".new-" + std::to_string(::getpid());
  return wanted;
}

[[noreturn]] void refuse(const std::string& name, const std::string& what, const std::system_error& failed) {
  Problem problem;
  problem.file = name;
  problem.message = what + failed.code().message();
  problem.fix = "choose a place where you may write and there is room";
  throw Error(std::move(problem));
}

}  // namespace

void write_whole_file(const std::string& file, std::string_view text) {
  const fs::path unfinished = beside(file);
  try {
    write_to_disk(unfinished, text);
    fs::rename(unfinished, file);
  } catch (const std::system_error& failed) {
    std::error_code ignored;
    fs::remove(unfinished, ignored);
    refuse(file, "this file could not be written: ", failed);
  }
  sync_folder_of(file);
}

void write_whole_folder(const std::string& shown_name, const fs::path& wanted,
                        const std::vector<FolderFile>& files) {
  const fs::path unfinished = beside(wanted);
  try {
    for (const FolderFile& file : files) {
      const fs::path path = unfinished / file.name;
      fs::create_directories(path.parent_path());
      write_to_disk(path, file.text);
      sync_folder_of(path);
    }
    fs::rename(unfinished, wanted);
  } catch (const std::system_error& failed) {
    std::error_code ignored;
    fs::remove_all(unfinished, ignored);
    refuse(shown_name, "the folder could not be made: ", failed);
  }
  sync_folder_of(wanted);
}

}  // namespace noonleaf::cli
