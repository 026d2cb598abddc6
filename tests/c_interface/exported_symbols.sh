#!/bin/sh
# The symbols that the shared library shows, against the committed list: exported_symbols.sh NM LIBRARY LIST
# A name that is gone breaks programs; a new one is a promise. Either way the list changes in the same commit.
set -eu
nm=$1 library=$2 list=$3
shown=$(mktemp)
trap 'rm -f "$shown"' EXIT
"$nm" -D --defined-only "$library" | awk '{ sub(/@.*/, "", $3); print $2, $3 }' | LC_ALL=C sort >"$shown"
if diff -u "$list" "$shown"; then
  echo "$(grep -c '^T' "$shown") functions, nothing else"
else
  echo "The exported symbols (+) are not those of $list (-)."
  exit 1
fi
