#!/bin/sh
# Builds the fuzzers and runs each for ten minutes, one after the other; says what each did and what it found.
#   sh tests/fuzz/run-long.sh [TARGET…]
# NOONLEAF_FUZZ_SECONDS for each target (600), NOONLEAF_FUZZ_JOBS at once (1), NOONLEAF_FUZZ_FOLDER to build in
# (build-fuzz at the top).
# New inputs stay in the folder's found/<target>; tests/fuzz/keep.sh takes over what reaches more code.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
folder=${NOONLEAF_FUZZ_FOLDER:-$root/build-fuzz}
seconds=${NOONLEAF_FUZZ_SECONDS:-600}

jobs=${NOONLEAF_FUZZ_JOBS:-1}

missing() {
  echo "not run: $1"
  exit 77
}

build() {
  command -v clang++ >/dev/null 2>&1 || missing "clang++ is not there (Debian package clang)"
  mkdir -p "$folder"
  echo 'extern "C" int LLVMFuzzerTestOneInput(const unsigned char*, unsigned long) { return 0; }' >"$folder/probe.cpp"
  clang++ -fsanitize=fuzzer,address,undefined "$folder/probe.cpp" -o "$folder/probe" >"$folder/probe.log" 2>&1 ||
    missing "clang has no libFuzzer (Debian package libclang-rt-dev)"
  cmake -G Ninja -S "$root" -B "$folder" -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=None -DNOONLEAF_FUZZ=ON \
    -DNOONLEAF_DISPATCH=OFF -DNOONLEAF_CLI=OFF -DNOONLEAF_TESTS=OFF -DNOONLEAF_INSTALL=OFF >"$folder/cmake.log" 2>&1 ||
    { cat "$folder/cmake.log"; exit 1; }
  cmake --build "$folder" --target all_fuzzers >"$folder/build.log" 2>&1 || { tail -n 40 "$folder/build.log"; exit 1; }
}

# value NAME LOG: a number of libFuzzer's last words, or 0
value() { sed -n "s/^stat::$1: *//p" "$2" | tail -n 1; }
# edges LOG: what was covered at the end
edges() { sed -n 's/.* cov: \([0-9]*\) .*/\1/p' "$1" | tail -n 1; }

# fuzz NAME LONGEST WORDS SEEDS…: one target, seeds are folders and files; its findings are files crash-…, timeout-…,
# oom-…, leak-… in found/<target>
fuzz() {
  name=$1 longest=$2 words=$3
  shift 3
  found=$folder/found/$name log=$folder/$name.log dictionary='' single=''
  mkdir -p "$found" "$found.tmp"
  [ "$words" = none ] || dictionary="-dict=$here/words/$words.txt"
  folders=$here/corpus/$name
  for seed in "$@"; do
    if [ -d "$seed" ]; then folders="$folders $seed"; else single=${single:+$single,}$seed; fi
  done
  status=0
  # Kept inputs and seeds are read, new ones written into the first folder.
  # shellcheck disable=SC2086
  TMPDIR=$found.tmp "$folder/tests/fuzz/fuzz_$name" -max_total_time="$seconds" -max_len="$longest" -rss_limit_mb=2048 -timeout=10 \
    -print_final_stats=1 -artifact_prefix="$found/" $dictionary \
    ${single:+-seed_inputs="$single"} "$found" $folders >"$log" 2>&1 || status=1
  printf '%-16s %10s %7s  %s\n' "$name" "$(value number_of_executed_units "$log")" "$(edges "$log")" \
    "$([ $status = 0 ] && echo nothing || sed -n 's/^.*Test unit written to //p' "$log" | tail -n 1)"
  [ $status = 0 ] || { failed=1; grep -v '^#' "$log" | tail -n 40; }
}

# The script calls itself for each target, so that several can run at once.
if [ "${1:-}" = --only ]; then
  failed=0
  while read -r name longest words seeds; do
    # shellcheck disable=SC2086
    [ "$name" != "$2" ] || fuzz "$name" "$longest" "$words" $seeds
  done <"$folder/tests/fuzz/targets.txt"
  exit $failed
fi
build
printf '%-16s %10s %7s  %s\n' target inputs edges found
[ $# -gt 0 ] || set -- $(cut -d ' ' -f 1 "$folder/tests/fuzz/targets.txt")
printf '%s\n' "$@" | xargs -n 1 -P "$jobs" sh "$0" --only ||
  { echo "something was found; the inputs lie in $folder/found"; exit 1; }
