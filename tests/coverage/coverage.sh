#!/bin/sh
# coverage.sh [BUILD]: builds everything in BUILD (build-coverage) so that it counts the lines that run, runs all tests,
# prints the share of each file of lib, and lists the lines that no test reaches in BUILD/uncovered.txt. Ends with 1 below
# 95 % of all lines. Needs GCC and gcovr (Debian package gcovr); some twenty minutes on two processors.
set -eu
root=$(cd "$(dirname "$0")/../.." && pwd)
build=${1:-"$root/build-coverage"}
command -v gcovr >/dev/null 2>&1 || { echo "gcovr is missing (Debian package gcovr): not run"; exit 77; }
cmake -G Ninja -S "$root" -B "$build" -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG="-O0 --coverage -fprofile-update=atomic" \
  -DCMAKE_EXE_LINKER_FLAGS=--coverage -DCMAKE_SHARED_LINKER_FLAGS=--coverage -DNOONLEAF_DISPATCH=OFF -DNOONLEAF_TESTS=ON \
  -DNOONLEAF_INSTALL=OFF >"$build.log" 2>&1 || { cat "$build.log"; exit 1; }
cmake --build "$build" >>"$build.log" 2>&1 || { tail -n 40 "$build.log"; exit 1; }
find "$build" -name '*.gcda' -delete
ctest --test-dir "$build" --output-on-failure -j "$(nproc)"
cd "$root"
gcovr --root . --filter 'lib/' --exclude-throw-branches --gcov-ignore-parse-errors --json "$build/coverage.json" \
  --txt "$build/coverage.txt" --fail-under-line 95 "$build" && verdict=0 || verdict=$?
python3 "$root/tests/coverage/uncovered.py" "$build/coverage.json" >"$build/uncovered.txt"
cat "$build/coverage.txt"
echo "lines that no test reaches: $build/uncovered.txt"
exit $verdict
