#!/bin/sh
# reference.sh: the API reference of the installed headers, by Doxygen without a warning. Ends with 77 without Doxygen.
# From the environment: SOURCE, PREFIX (an installed copy), WORK (a folder to make anew).
set -eu
command -v doxygen >/dev/null || { echo "skipped: no doxygen"; exit 77; }
rm -rf "$WORK"
mkdir -p "$WORK"
NOONLEAF_HEADERS="$PREFIX/include" NOONLEAF_REFERENCE="$WORK" doxygen "$SOURCE/docs/Doxyfile" 2>"$WORK/log"
# The only warnings let pass are those of the files and numbers in undocumented.txt.
if grep -v '(variable) of .* is not documented' "$WORK/log"; then
  echo "FAILED: Doxygen warns, see above"
  exit 1
fi
sed "s|^$PREFIX/include/||; s|:.*||" "$WORK/log" | LC_ALL=C sort | uniq -c | awk '{ print $2, $1 }' >"$WORK/undocumented"
grep -v '^#' "$SOURCE/tests/consumer/undocumented.txt" | LC_ALL=C sort | diff -u - "$WORK/undocumented" || {
  grep 'is not documented' "$WORK/log"
  echo "FAILED: data members without a comment (+) are not those of tests/consumer/undocumented.txt (-): write the comments,"
  echo "or take off the list what has them now"
  exit 1
}
grep -q 'daily_et0_mm_d' "$WORK"/html/*.html || { echo "FAILED: the reference is empty"; exit 1; }
echo "$(find "$WORK/html" -name '*.html' | wc -l) pages"
