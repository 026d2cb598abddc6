#!/bin/sh
# table-rows.sh DOMAIN: of what a benchmark program prints, its ratios as rows of a table in Markdown.
awk -v domain="$1" '
  /^ratios of this run|^speed of the whole reader|^ns per member/ { table = 1; next }
  table && /^greatest/ { table = 0 }
  table && NF > 1 && $NF ~ /^[0-9.]+$/ {
    ratio = $NF
    sub(/ +([0-9.]+ ns +)?[0-9.]+$/, "")
    sub(/^batch against /, "")
    printf "| %s | %s | %s |\n", domain, $0, ratio
  }'
