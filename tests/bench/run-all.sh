#!/bin/sh
# run-all.sh [BUILD]: builds every benchmark in BUILD (build-bench) as a release, runs them all on one core, and prints one
# table of ratios, every one against a baseline of the same run, then scaling and the times of whole commands.
# The whole outputs stay in BUILD/bench-*.txt. A quiet machine is the reader's business: the load is printed.
set -eu
root=$(cd "$(dirname "$0")/../.." && pwd)
build=${1:-"$root/build-bench"}
programs="reference weather balance heat scaling planner round command"

cmake -G Ninja -S "$root" -B "$build" -DCMAKE_BUILD_TYPE=Release -DNOONLEAF_TESTS=ON -DNOONLEAF_BENCHMARKS=ON >"$build.log" 2>&1 ||
  { cat "$build.log"; exit 1; }
# shellcheck disable=SC2086  # one target per program is meant
cmake --build "$build" --target noonleaf_cli $(printf 'bench_%s ' $programs) >>"$build.log" 2>&1 ||
  { tail -n 30 "$build.log"; exit 1; }

one_core=""
command -v taskset >/dev/null && one_core="taskset -c 0"
for program in $programs; do
  options=""
  case $program in reference | weather | balance | heat) options="--benchmark_min_time=0.3 --benchmark_repetitions=3" ;; esac
  echo "bench_$program …" >&2
  # shellcheck disable=SC2086
  $one_core "$build/tests/bench/bench_$program" $options >"$build/bench-$program.txt" 2>&1 ||
    { tail -n 5 "$build/bench-$program.txt"; exit 1; }
done

echo "$(head -n 1 "$build/bench-scaling.txt"); Release (-O3); load $(cut -d' ' -f1 /proc/loadavg)"
grep -h '^batch kernels' "$build/bench-reference.txt"
echo
echo "| domain | ours against | ratio |"
echo "|---|---|---|"
for program in reference weather balance heat; do
  awk -v domain="$program" '
    /^ratios of this run|^speed of the whole reader|^ns per member/ { table = 1; next }
    table && /^greatest/ { table = 0 }
    table && NF > 1 && $NF ~ /^[0-9.]+$/ {
      ratio = $NF
      sub(/ +([0-9.]+ ns +)?[0-9.]+$/, "")
      sub(/^batch against /, "")
      printf "| %s | %s | %s |\n", domain, $0, ratio
    }' "$build/bench-$program.txt"
done
echo
for program in scaling round planner; do
  tail -n +2 "$build/bench-$program.txt"
  echo
done
grep -h '_median' "$build/bench-command.txt" | awk '{ name = $0; sub(/_median.*/, "", name); sub(/\/.*/, "", name); print name ": " $0 }' |
  sed -E 's/: .*_median +/: /'
