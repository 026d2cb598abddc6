#include "noonleaf/garden/locked_file.hpp"

#include <cerrno>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <system_error>
#include <thread>
#include <unistd.h>
#include <utility>

#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::chrono::milliseconds pause_between_tries{10};
constexpr mode_t usual_permissions = 0666;  // the umask takes off what the person wants off

Error refusal(std::string_view shown_name, std::string message, std::string fix) {
  Problem problem;
  problem.file = shown_name;
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  return Error(std::move(problem));
}

std::string reason(int code) { return std::generic_category().message(code); }

/// A descriptor that is closed at the end.
class OpenFile {
 public:
  OpenFile(const std::filesystem::path& path, int flags)
      : descriptor_(::open(path.c_str(), flags, usual_permissions)) {}
  ~OpenFile() {
    if (descriptor_ >= 0) ::close(descriptor_);
  }
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  bool is_open() const { return descriptor_ >= 0; }
  int descriptor() const { return descriptor_; }

 private:
  int descriptor_;
};

/// Writes all bytes; the error code, or 0.
int write_all(int descriptor, std::string_view bytes) {
  while (!bytes.empty()) {  // one round, unless the disk fills up: the second then says why
    const ssize_t written = ::write(descriptor, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return errno;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return ::fsync(descriptor) == 0 ? 0 : errno;
}

/// A new name is on the disk only when its folder is.
void sync_folder(const std::filesystem::path& file) {
  const std::filesystem::path folder =
      file.has_parent_path() ? file.parent_path() : std::filesystem::path(".");
  const OpenFile opened(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (opened.is_open())
    ::fsync(opened.descriptor());  // some file systems cannot; the entry itself is written
}

}  // namespace

FileLock::FileLock(const std::filesystem::path& lock_file, std::string_view shown_name,
                   std::chrono::milliseconds longest_wait) {
  descriptor_ = ::open(lock_file.c_str(), O_RDWR | O_CREAT | O_NOFOLLOW | O_CLOEXEC, usual_permissions);
  if (descriptor_ < 0 && errno == ELOOP) {  // it could make an empty file anywhere
    throw refusal(shown_name, "the lock beside the journal is a link",
                  "take it away; the next entry makes a new one");
  }
  if (descriptor_ < 0) {
    throw refusal(shown_name, "the lock beside the journal cannot be made: " + reason(errno),
                  "check who may write into this folder, and that the disk has room");
  }
  const auto tries = longest_wait / pause_between_tries + 1;
  for (auto count = tries; count > 0; --count) {
    if (::flock(descriptor_, LOCK_EX | LOCK_NB) == 0) return;
    if (errno != EWOULDBLOCK && errno != EINTR) {
      const int code = errno;
      ::close(descriptor_);
      throw refusal(shown_name, "this file system cannot lock: " + reason(code),
                    "keep the garden folder on a disk of this computer");
    }
    std::this_thread::sleep_for(pause_between_tries);
  }
  ::close(descriptor_);
  const auto seconds = std::chrono::duration<double>(longest_wait).count();
  throw refusal(
      shown_name,
      "somebody else has been writing for " + number_text(seconds) + " seconds; nothing was written",
      "wait and log it again; if it lasts, look for a noonleaf that hangs and end it");
}

FileLock::~FileLock() { ::close(descriptor_); }

void append_durably(const std::filesystem::path& file, std::string_view shown_name, std::string_view bytes) {
  std::error_code code;
  const bool is_new = !std::filesystem::exists(file, code);
  const OpenFile opened(file, O_WRONLY | O_APPEND | O_CREAT | O_CLOEXEC);
  if (!opened.is_open()) {
    throw refusal(shown_name, "this file cannot be opened for writing: " + reason(errno),
                  "check who may write it (its permissions)");
  }
  struct stat before {};
  const int failed =
      ::fstat(opened.descriptor(), &before) == 0 ? write_all(opened.descriptor(), bytes) : errno;
  if (failed == 0) {
    if (is_new) sync_folder(file);
    return;
  }
  const bool restored = ::ftruncate(opened.descriptor(), before.st_size) == 0;
  if (is_new) std::filesystem::remove(file, code);
  throw refusal(shown_name, "the entry could not be written: " + reason(failed),
                restored ? "make room on the disk, then log it again; what stood in the file is as it was"
                         : "make room on the disk, then look at the last line of the file");
}

}  // namespace v1
}  // namespace noonleaf
