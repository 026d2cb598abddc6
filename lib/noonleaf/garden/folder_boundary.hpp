#pragma once

#include <filesystem>
#include <string_view>

namespace noonleaf {
inline namespace v1 {

/// Keeps what is read and written within the garden folder: a folder that somebody sent may hold links.
///
/// Input     folder  the garden folder, which may itself be reached by a link; file  in it, as it would be opened;
///           shown_name  how messages call the file
/// Throws    Error when a link takes the file out of the folder, whether or not anything is there
/// Note      A link to another file of the same folder is followed. What is changed between this look and the
///           opening of the file is not seen: whoever can do that may write into the folder anyhow.
void require_inside(const std::filesystem::path& folder, const std::filesystem::path& file,
                    std::string_view shown_name);

/// The same for a file that lies directly in its garden folder.
void require_in_its_folder(const std::filesystem::path& file, std::string_view shown_name);

}  // namespace v1
}  // namespace noonleaf
