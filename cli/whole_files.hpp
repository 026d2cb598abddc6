#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace noonleaf::cli {

/// One file of a new folder, its name below it.
struct FolderFile {
  std::string name, text;
};

/// A file, whole or not at all: written beside, brought to the disk, then renamed over what was there. A run
/// that is cut short leaves at most a file named like `sheet.html.new-4711`.
/// Throws    Error that names `file`
void write_whole_file(const std::string& file, std::string_view text);

/// A new folder in the same way; `wanted` must not be there.
/// Throws    Error that names `shown_name`
void write_whole_folder(const std::string& shown_name, const std::filesystem::path& wanted,
                        const std::vector<FolderFile>& files);

}  // namespace noonleaf::cli
