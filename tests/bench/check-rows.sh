#!/bin/sh
# check-rows.sh PROGRAMS PAGE: whether the table of ratios in PAGE (docs/performance.md) has the very rows that the
# benchmark programs in the folder PROGRAMS print, in their order, and whether compare-ratios.awk finds each of them again.
# Nothing is measured, no number is compared.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
programs=$1 page=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
for program in reference weather balance heat; do
  "$programs/bench_$program" --rows | sh "$here/table-rows.sh" $program
done | sed 's/ | [0-9.]* |$//' >"$work/printed"
awk -F ' *[|] *' 'NF == 5 && $4 ~ /^[0-9.]+$/ { print "| " $2 " | " $3 }' "$page" >"$work/documented"
[ "$(wc -l <"$work/printed")" -gt 10 ] || { echo "FAILED: the programs name too few rows"; exit 1; }
diff -u "$work/documented" "$work/printed" ||
  { echo "FAILED: the rows of $page (-) are not those of the programs (+)"; exit 1; }

sed 's/$/ | 1 |/' "$work/printed" >"$work/rows"
found=$(awk -f "$here/compare-ratios.awk" "$work/rows" "$work/rows" | grep -c ' | 1 | 1 | 1.00 |$') || true
[ "$found" = "$(wc -l <"$work/printed")" ] ||
  { echo "FAILED: compare-ratios.awk loses rows"; exit 1; }
echo "$(wc -l <"$work/printed") rows, the same in the page and in the programs"
