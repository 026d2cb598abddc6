#!/bin/sh
# Takes over into tests/fuzz/corpus what the fuzzers found that reaches more code: the fewest and smallest inputs.
#   sh tests/fuzz/keep.sh [TARGET…]   after run-long.sh; NOONLEAF_FUZZ_FOLDER as there
# Inputs with a name of their own (not 40 hexadecimal digits) stay as they are: they are examples and old findings.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
folder=${NOONLEAF_FUZZ_FOLDER:-$root/build-fuzz}
largest_bytes=2048

while read -r name longest words seeds; do
  [ $# -gt 0 ] && case " $* " in *" $name "*) ;; *) continue ;; esac
  merged=$folder/merged/$name small=$folder/small/$name
  rm -rf "$merged" "$small"
  mkdir -p "$merged" "$small" "$folder/found/$name"
  find "$folder/found/$name" -type f -size "-$((largest_bytes + 1))c" ! -name '*-*' -exec cp {} "$small" \;
  # Named inputs first, so that nothing is kept that they reach already.
  find "$here/corpus/$name" -type f ! -name "$(printf '%040d' 0 | sed 's/0/[0-9a-f]/g')" -exec cp {} "$merged" \;
  "$folder/tests/fuzz/fuzz_$name" -set_cover_merge=1 -use_counters=0 -max_len="$longest" \
    "$merged" "$here/corpus/$name" "$small" \
    >"$folder/$name.merge.log" 2>&1 || { tail -n 20 "$folder/$name.merge.log"; exit 1; }
  find "$here/corpus/$name" -type f -delete
  cp "$merged"/* "$here/corpus/$name"
  printf '%-16s %5d inputs %8d bytes\n' "$name" "$(find "$merged" -type f | wc -l)" \
    "$(cat "$merged"/* | wc -c)"
done <"$folder/tests/fuzz/targets.txt"
