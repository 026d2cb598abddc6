#!/bin/sh
# run-all.sh [--short]: installs what is missing, builds everything, and runs all tests, those included that build
# everything once more with sanitizers and fuzzers. --short leaves these out.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
. "$root/.ci/prepare.sh"

long=ON
case ${1:-} in
  --short) long=OFF ;;
  "") ;;
  *) stop "\"$1\" is not known here." "It is sh tests/run-all.sh, or sh tests/run-all.sh --short" ;;
esac

install_packages
build build-tests "all all_internal_headers all_verify_interface_header_sets" \
  -DNOONLEAF_TESTS=ON -DCMAKE_BUILD_TYPE=Release -DCMAKE_VERIFY_INTERFACE_HEADER_SETS=ON -DNOONLEAF_LONG_TESTS=$long
say "3. Running the tests …"
ctest --test-dir "$root/build-tests" --output-on-failure -j "$(nproc)"
