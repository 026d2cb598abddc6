#!/bin/sh
# Installs what is missing, builds everything, and runs all tests.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
. "$root/.ci/prepare.sh"

install_packages
build build-tests "all all_internal_headers all_verify_interface_header_sets" \
  -DNOONLEAF_TESTS=ON -DCMAKE_BUILD_TYPE=Release -DCMAKE_VERIFY_INTERFACE_HEADER_SETS=ON
say "3. Running the tests …"
ctest --test-dir "$root/build-tests" --output-on-failure -j "$(nproc)"
