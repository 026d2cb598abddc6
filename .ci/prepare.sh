# Read by cli/try-demo.sh and tests/run-all.sh: installs what is missing, configures, builds.
# Plain POSIX sh, since a fresh machine has nothing else.
set -eu

say() { printf '%s\n' "$*"; }

stop() {
  say ""
  say "Stopped: $1"
  shift
  for line in "$@"; do say "  $line"; done
  exit 1
}

needed_packages() { sed -e 's/#.*//' -e '/^[[:space:]]*$/d' "$root/.ci/packages"; }

missing_packages() {
  for package in $(needed_packages); do
    state=$(dpkg-query -W -f='${Status}' "$package" 2>/dev/null || true)
    [ "$state" = "install ok installed" ] || printf '%s ' "$package"
  done
}

install_packages() {
  command -v dpkg-query >/dev/null 2>&1 || stop "this is not a Debian machine (no dpkg, no apt)." \
    "Install by hand a C++20 compiler, CMake 3.24 or newer, Ninja, and the libraries in .ci/packages, then run:" \
    "  cmake -G Ninja -S . -B build && cmake --build build && ./build/cli/noonleaf --help"
  wanted=$(missing_packages)
  if [ -z "$wanted" ]; then
    say "1. All packages are installed."
    return
  fi
  say "1. Installing Debian packages: $wanted"
  as_root=""
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null 2>&1 || stop "packages are missing and you are not root." \
      "Ask an administrator to run: apt-get install $wanted" "then run this command again."
    as_root="sudo"
  fi
  command -v apt-get >/dev/null 2>&1 || stop "apt-get is not on this machine." "Install by hand: $wanted"
  log=$(mktemp)
  # shellcheck disable=SC2086  # one word per package is meant
  if ! { $as_root apt-get update && $as_root env DEBIAN_FRONTEND=noninteractive \
         apt-get install -y --no-install-recommends $wanted; } >"$log" 2>&1; then
    tail -n 15 "$log"
    stop "apt-get could not install the packages; its last words are above." \
      "Check the network and the package sources, then run this command again."
  fi
  rm -f "$log"
}

# build FOLDER TARGETS -- CMAKE OPTIONS
build() {
  folder=$1 targets=$2
  shift 2
  command -v c++ >/dev/null 2>&1 || command -v g++ >/dev/null 2>&1 ||
    stop "there is no C++ compiler." "Install g++ 12 or newer."
  say "2. Building in $folder (the first time takes some minutes; after that seconds) …"
  log=$(mktemp)
  # shellcheck disable=SC2086
  if ! {
    cmake -G Ninja -S "$root" -B "$root/$folder" "$@" && cmake --build "$root/$folder" --target $targets
  } >"$log" 2>&1; then
    tail -n 40 "$log"
    stop "the build failed; the last lines are above." "The whole log is in $log"
  fi
  rm -f "$log"
}
