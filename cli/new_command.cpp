#include <filesystem>
#include <fstream>
#include <system_error>
#include <unistd.h>

#include "noonleaf/error.hpp"

#include "commands.hpp"
#include "demo_files.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const std::string& folder, std::string message, std::string fix) {
  Problem problem;
  problem.file = folder;
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  throw Error(std::move(problem));
}

void write_files(const fs::path& folder) {
  for (const DemoFile& file : demo_files()) {
    const fs::path path = folder / file.name;
    fs::create_directories(path.parent_path());
    std::ofstream stream(path, std::ios::binary);
    stream.write(file.text.data(), static_cast<std::streamsize>(file.text.size()));
    if (!stream.flush())
      throw fs::filesystem_error("cannot write", path, std::make_error_code(std::errc::io_error));
  }
}

/// Beside the wanted name, so that a folder under that name is always whole.
fs::path folder_beside(const fs::path& wanted) {
  fs::path beside = wanted;
  beside += ".new-" + std::to_string(::getpid());
  return beside;
}

}  // namespace

int run(const NewArguments& arguments) {
  fs::path wanted(arguments.folder);
  if (!wanted.has_filename()) wanted = wanted.parent_path();  // "garden/" is "garden"
  std::error_code code;
  if (wanted.empty())
    refuse(arguments.folder, "the folder has no name", "name a folder that does not exist yet");
  if (fs::exists(fs::symlink_status(wanted, code))) {
    refuse(arguments.folder, "this exists already; nothing was changed",
           "choose a name that does not exist yet");
  }
  const fs::path beside = folder_beside(wanted);
  try {
    write_files(beside);
    fs::rename(beside, wanted);
  } catch (const fs::filesystem_error& failed) {
    fs::remove_all(beside, code);
    refuse(arguments.folder, "the folder could not be made: " + failed.code().message(),
           "choose a place where you may write and there is room");
  }
  print("Made " + wanted.string() + ", a complete invented garden. Now try:\n\n  noonleaf today " +
        wanted.string() + "\n\nThen put your own beds into " + (wanted / "garden.toml").string() +
        " and your weather into " + (wanted / "weather").string() +
        "/,\ntake the line demo_date out, and run: noonleaf check " + wanted.string() + "\n");
  return 0;
}

}  // namespace noonleaf::cli
