#!/bin/sh
# build-and-test.sh SANITIZERS SOURCE BUILD CLANG++ CLANG: builds everything with these sanitizers and runs all tests.
# CMAKE_CXX_COMPILER_LAUNCHER of the environment is used where it is set.
set -eu
kind=$1 source=$2 build=$3
export CXX=$4 CC=$5
printf 'int main() {}\n' >"$build-probe.cpp"
if ! "$CXX" "-fsanitize=$kind" -o "$build-probe" "$build-probe.cpp" 2>/dev/null; then
  echo "the sanitizers of clang are missing (libclang-rt-dev): not run"
  exit 77
fi
cmake -G Ninja -S "$source" -B "$build" -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG=-O1 \
  "-DNOONLEAF_SANITIZE=$kind" \
  -DNOONLEAF_TESTS=ON -DNOONLEAF_INSTALL=OFF >"$build.log"
cmake --build "$build" >>"$build.log" || { tail -n 40 "$build.log"; exit 1; }
ctest --test-dir "$build" --output-on-failure --no-tests=error -j "$(nproc)"
