#pragma once

#include <chrono>
#include <filesystem>
#include <string_view>

namespace noonleaf {
inline namespace v1 {

/// Keeps other writers away from a file while it lives: flock on an empty file beside it. The kernel gives
/// the lock back when the holder ends, however it ends, so a killed writer blocks nobody.
class FileLock {
 public:
  /// Throws    Error when the lock file cannot be made, or is held longer than `longest_wait`
  FileLock(const std::filesystem::path& lock_file, std::string_view shown_name,
           std::chrono::milliseconds longest_wait);
  ~FileLock();
  FileLock(const FileLock&) = delete;
  FileLock& operator=(const FileLock&) = delete;

 private:
  int descriptor_ = -1;
};

/// Adds bytes to the end of a file in one write and waits until they are on the disk. Makes the file when
/// needed. Throws    Error when that fails; the file is then cut back to what it was
void append_durably(const std::filesystem::path& file, std::string_view shown_name, std::string_view bytes);

}  // namespace v1
}  // namespace noonleaf
