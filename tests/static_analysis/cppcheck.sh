#!/bin/sh
# cppcheck.sh: cppcheck over lib and cli, with the list of what is left out and why beside it. Ends with 1 for a finding.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cd "$here/../.."
command -v cppcheck >/dev/null 2>&1 || { echo "cppcheck is missing (Debian package cppcheck): not run"; exit 77; }
cppcheck --std=c++20 --language=c++ --enable=warning,performance,portability,style --inline-suppr \
  --suppressions-list="$here/cppcheck-suppressions.txt" --error-exitcode=1 --quiet -j "$(nproc)" -I lib -I cli lib cli
echo "$(find lib cli -name '*.cpp' | wc -l) sources, nothing found"
