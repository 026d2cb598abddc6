#!/bin/sh
# The C program against an installed copy: installed.sh find_package|pkg_config PREFIX WORK CC VERSION
# It needs a C compiler and nothing else: no C++, no Eigen. Ends with 77 where pkg-config is missing.
set -eu
way=$1 prefix=$2 work=$3 compiler=$4 version=$5
here=$(cd "$(dirname "$0")" && pwd)
garden="$here/../../weather_samples/demo"
rm -rf "$work"
mkdir -p "$work"
cd "$work"
case $way in
  find_package)
    cmake -G Ninja -S "$here/installed" -B build -DCMAKE_C_COMPILER="$compiler" -DCMAKE_PREFIX_PATH="$prefix" \
      -DCMAKE_DISABLE_FIND_PACKAGE_Eigen3=ON -DVERSION="$version"
    cmake --build build
    build/every_call "$garden" "$here/broken"
    ;;
  pkg_config)
    command -v pkg-config >/dev/null || { echo "skipped: no pkg-config"; exit 77; }
    PKG_CONFIG_PATH=$(dirname "$(find "$prefix" -name noonleaf-c.pc)")
    export PKG_CONFIG_PATH
    # shellcheck disable=SC2046  # words are meant
    "$compiler" -std=c11 -pedantic -Wall -Wextra -Werror -DNOONLEAF_EXPECTED_VERSION="\"$version\"" \
      "$here/every_call.c" -o every_call $(pkg-config --cflags --libs noonleaf-c) -lm
    LD_LIBRARY_PATH=$(dirname "$(find "$prefix" -name libnoonleaf_c.so)")
    export LD_LIBRARY_PATH
    ./every_call "$garden" "$here/broken"
    ;;
  *) echo "find_package or pkg_config, not $way"; exit 2 ;;
esac
