#!/bin/sh
# check-recipe.sh PAGE SOURCE PROGRAM WORDS…: runs a recipe; PAGE must show its SOURCE and what it printed, to the
# letter.
set -eu
page=$1 source=$2
shift 2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
"$@" >"$work/printed"
[ -s "$work/printed" ] || { echo "FAILED: it printed nothing"; exit 1; }
name=$(basename "$source")
# What stands on the page between the fences below the line that names the source: first the program, then its output.
awk -v name="$name" -v work="$work" '
  index($0, "tests/recipes/" name) { found = 1; next }
  found && /^```/ { if (inside) { inside = 0; if (++blocks == 2) exit } else inside = 1; next }
  inside { print > (work "/" (blocks == 0 ? "source" : "output")) }' "$page"
for part in source output; do
  [ -f "$work/$part" ] || { echo "FAILED: $page does not show the $part of $name"; exit 1; }
done
diff "$source" "$work/source" || { echo "FAILED: the page shows another $name"; exit 1; }
diff "$work/printed" "$work/output" || { echo "FAILED: the page shows another output of $name"; exit 1; }
