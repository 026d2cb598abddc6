#!/bin/sh
# build-and-run.sh WAY: builds the programs of this folder against noonleaf in one way, and runs them.
# From the environment: SOURCE (this repository), PREFIX (an installed copy), WORK (a folder to make anew), CXX, and,
# to compare answers with, COMMAND (the installed noonleaf). Ends with 77 where the machine lacks what the way needs.
set -eu
way=$1
here="$SOURCE/tests/consumer"
rm -rf "$WORK"
mkdir -p "$WORK"
cd "$WORK"

skip() { echo "skipped: $*"; exit 77; }
fail() { echo "FAILED: $*"; exit 1; }

cmake_build() {
  cmake -G Ninja -S "$here" -B build -DCMAKE_CXX_COMPILER="$CXX" -DCMAKE_BUILD_TYPE=Debug \
    -DCMAKE_CXX_FLAGS_DEBUG=-O0 "$@"
  cmake --build build
}

run_science() {
  "$1/science"
  "$1/science_native"
}

# The same answer, byte by byte, as the command's own.
run_garden() {
  "$COMMAND" new demo --demo >/dev/null
  "$COMMAND" today demo --format json >expected.json
  "$1/garden" demo >found.json
  cmp expected.json found.json
  echo "the day's answer is the command's own: $(wc -c <found.json) bytes"
}

# No package but Eigen (and threads) may be needed for the science, or for any component once it is a shared library.
without_others() {
  for package in date fmt tomlplusplus nlohmann_json Ical; do
    printf -- '-DCMAKE_DISABLE_FIND_PACKAGE_%s=ON ' $package
  done
}

pkg_config() {
  command -v pkg-config >/dev/null || skip "no pkg-config"
  PKG_CONFIG_PATH=$(dirname "$(find "$PREFIX" -name noonleaf.pc)")
  export PKG_CONFIG_PATH
  mkdir build
  set -x
  # shellcheck disable=SC2046  # words are meant
  "$CXX" -std=c++20 "$here/science.cpp" -o build/science $(pkg-config "$@" --cflags --libs noonleaf)
  # shellcheck disable=SC2046
  "$CXX" -std=c++20 -O2 -march=native "$here/science.cpp" -o build/science_native \
    $(pkg-config "$@" --cflags --libs noonleaf)
  # shellcheck disable=SC2046
  "$CXX" -std=c++20 "$here/garden.cpp" -o build/garden $(pkg-config "$@" --cflags --libs noonleaf-report)
  set +x
}

case $way in
  find_package_static)
    cmake_build -DCMAKE_PREFIX_PATH="$PREFIX"
    run_science build
    run_garden build
    ;;
  find_package_science)
    # shellcheck disable=SC2046
    cmake_build -DCMAKE_PREFIX_PATH="$PREFIX" -DCOMPONENTS=science $(without_others)
    run_science build
    ;;
  find_package_shared)
    # shellcheck disable=SC2046
    cmake_build -DCMAKE_PREFIX_PATH="$PREFIX" $(without_others)
    run_science build
    run_garden build
    ;;
  unknown_component)
    if cmake -G Ninja -S "$here" -B build -DCMAKE_CXX_COMPILER="$CXX" -DCMAKE_PREFIX_PATH="$PREFIX" \
       -DCOMPONENTS="science;sprinklers" >log 2>&1; then fail "a component that does not exist was found"; fi
    tr -s ' \n' ' ' <log | grep -q "sprinklers" || fail "the message does not name the component"
    ;;
  pkg_config_static)
    pkg_config --static
    run_science build
    run_garden build
    ;;
  pkg_config_shared)
    pkg_config
    LD_LIBRARY_PATH=$(dirname "$(find "$PREFIX" -name libnoonleaf.so)")
    export LD_LIBRARY_PATH
    run_science build
    run_garden build
    ;;
  add_subdirectory)
    cmake_build -DWAY=add_subdirectory -DNOONLEAF_SOURCE="$SOURCE"
    run_science build
    ;;
  FetchContent)
    git -C "$SOURCE" rev-parse HEAD >/dev/null 2>&1 || skip "not a clone, or no git"
    cmake_build -DWAY=FetchContent -DNOONLEAF_SOURCE="$SOURCE"
    run_science build
    ;;
  newer_standard | clang_headers)
    # Every installed header, with nothing but the prefix and Eigen to include from, as the next standard too.
    compiler=$CXX
    if [ "$way" = clang_headers ]; then
      compiler=$(command -v clang++ || command -v clang++-14) || skip "no clang++: the headers were not tried with it"
    fi
    headers=$(cd "$(dirname "$(find "$PREFIX" -path '*/noonleaf/error.hpp')")/.." && pwd)
    (cd "$headers" && find noonleaf -name '*.hpp' | sort | sed 's/.*/#include <&>/') >all.cpp
    [ "$(wc -l <all.cpp)" -gt 100 ] || fail "too few headers installed"
    for standard in c++20 c++2b; do
      "$compiler" -std=$standard -fsyntax-only -Wall -Wextra -Werror -I "$headers" -isystem /usr/include/eigen3 all.cpp
      echo "$compiler -std=$standard: $(wc -l <all.cpp) headers"
    done
    ;;
  *) fail "no way is called $way" ;;
esac
