#!/bin/sh
# reference.sh: the API reference of the installed headers, by Doxygen without a warning. Ends with 77 without Doxygen.
# From the environment: SOURCE, PREFIX (an installed copy), WORK (a folder to make anew).
set -eu
command -v doxygen >/dev/null || { echo "skipped: no doxygen"; exit 77; }
rm -rf "$WORK"
mkdir -p "$WORK"
NOONLEAF_HEADERS="$PREFIX/include" NOONLEAF_REFERENCE="$WORK" doxygen "$SOURCE/docs/Doxyfile" 2>"$WORK/log"
if [ -s "$WORK/log" ]; then
  cat "$WORK/log"
  echo "FAILED: Doxygen warns, see above"
  exit 1
fi
grep -q 'daily_et0_mm_d' "$WORK"/html/*.html || { echo "FAILED: the reference is empty"; exit 1; }
echo "$(find "$WORK/html" -name '*.html' | wc -l) pages"
