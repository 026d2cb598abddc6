#include "noonleaf/garden/folder_boundary.hpp"

#include <algorithm>
#include <system_error>
#include <utility>

#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

namespace fs = std::filesystem;

constexpr int most_links = 40;  // as many as Linux follows in one name

/// Where a name leads when the last of it is a link, one link after the other; links in the folders before it
/// are followed by weakly_canonical. A link to nothing counts: writing to it would make the file there.
fs::path end_of_links(fs::path file, std::error_code& code) {
  for (int followed = 0; followed < most_links; ++followed) {
    if (!fs::is_symlink(fs::symlink_status(file, code))) break;
    const fs::path target = fs::read_symlink(file, code);
    if (code) return file;
    file = target.is_absolute() ? target : file.parent_path() / target;
  }
  code.clear();
  return fs::weakly_canonical(file, code);
}

}  // namespace

void require_inside(const fs::path& folder, const fs::path& file, std::string_view shown_name) {
  std::error_code code;
  const fs::path within = fs::canonical(folder.empty() ? fs::path(".") : folder, code);
  if (code) return;  // no such folder: opening the file says so
  const fs::path end = end_of_links(file, code);
  if (code) return;  // links in a ring, or a folder that may not be entered: opening the file says so
  const fs::path leads_to =
      fs::absolute(end, code);  // where nothing is there, weakly_canonical leaves it relative
  if (code) return;
  const auto parting = std::mismatch(within.begin(), within.end(), leads_to.begin(), leads_to.end());
  if (parting.first == within.end()) return;
  Problem problem;
  problem.file = shown_name;
  problem.message = "a link leads from here out of the garden folder, and is not followed";
  problem.fix = "put the file itself there";
  throw Error(std::move(problem));
}

void require_in_its_folder(const fs::path& file, std::string_view shown_name) {
  require_inside(file.parent_path(), file, shown_name);
}

}  // namespace v1
}  // namespace noonleaf
