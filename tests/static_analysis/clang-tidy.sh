#!/bin/sh
# clang-tidy.sh [FILE…]: clang-tidy with the checks of .clang-tidy over these sources, or all of lib and cli (half an
# hour of one processor). Ends with 1 for a finding. NOONLEAF_TIDY_FOLDER is where the commands of the compiler are put
# (build-tidy at the top).
set -eu
cd "$(dirname "$0")/../.."
folder=${NOONLEAF_TIDY_FOLDER:-build-tidy}
command -v clang-tidy >/dev/null 2>&1 || { echo "clang-tidy is missing (Debian package clang-tidy): not run"; exit 77; }
cmake -G Ninja -S . -B "$folder" -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=Debug -DNOONLEAF_TESTS=OFF \
  -DCMAKE_EXPORT_COMPILE_COMMANDS=ON >"$folder.log" 2>&1 || { cat "$folder.log"; exit 1; }
[ $# -gt 0 ] || set -- lib/noonleaf/*.cpp lib/noonleaf/*/*.cpp cli/*.cpp
printf '%s\n' "$@" | xargs -P "${NOONLEAF_TIDY_JOBS:-$(nproc)}" -n 1 sh -c \
  'clang-tidy -p "$0" --quiet "$1" 2>/dev/null || { echo "FAILED: $1"; exit 1; }' "$folder"
echo "$# sources, nothing found"
