#!/bin/sh
# run-all.sh [--compare | --rows] [BUILD]: builds every benchmark in BUILD (build-bench) as a release, runs them all on
# one core, and prints one table of ratios, every one against a baseline of the same run, then scaling and the times of
# whole commands. The whole outputs stay in BUILD/bench-*.txt. A quiet machine is the reader's business: the load is
# printed.
#   --compare  prints beside each ratio the one of docs/performance.md and how many times that it is
#   --rows     measures nothing: whether the rows of docs/performance.md are those of the programs (check-rows.sh)
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
what=all
case ${1:-} in --compare | --rows) what=${1#--} && shift ;; esac
build=${1:-"$root/build-bench"}
programs="reference weather balance heat scaling planner round load command"
[ $what != rows ] || programs="reference weather balance heat"

cmake -G Ninja -S "$root" -B "$build" -DCMAKE_BUILD_TYPE=Release -DNOONLEAF_TESTS=ON -DNOONLEAF_BENCHMARKS=ON \
  >"$build.log" 2>&1 ||
  { cat "$build.log"; exit 1; }
# shellcheck disable=SC2086  # one target per program is meant
cmake --build "$build" --target noonleaf_cli $(printf 'bench_%s ' $programs) >>"$build.log" 2>&1 ||
  { tail -n 30 "$build.log"; exit 1; }
[ $what != rows ] || exec sh "$here/check-rows.sh" "$build/tests/bench" "$root/docs/performance.md"

one_core=""
command -v taskset >/dev/null && one_core="taskset -c 0"
for program in $programs; do
  options=""
  case $program in
    reference | weather | balance | heat) options="--benchmark_min_time=0.3 --benchmark_repetitions=3" ;;
  esac
  echo "bench_$program …" >&2
  # shellcheck disable=SC2086
  $one_core "$build/tests/bench/bench_$program" $options >"$build/bench-$program.txt" 2>&1 ||
    { tail -n 5 "$build/bench-$program.txt"; exit 1; }
done

echo "$(head -n 1 "$build/bench-scaling.txt"); Release (-O3); load $(cut -d' ' -f1 /proc/loadavg)"
grep -h '^batch kernels' "$build/bench-reference.txt"
echo
rows() {
  for program in reference weather balance heat; do
    sh "$here/table-rows.sh" $program <"$build/bench-$program.txt"
  done
}
if [ $what = compare ]; then
  rows | awk -f "$here/compare-ratios.awk" "$root/docs/performance.md" -
  exit
fi
echo "| domain | ours against | ratio |"
echo "|---|---|---|"
rows
echo
for program in scaling round load planner; do
  tail -n +2 "$build/bench-$program.txt"
  echo
done
grep -h '_median' "$build/bench-command.txt" |
  awk '{ name = $0; sub(/_median.*/, "", name); sub(/\/.*/, "", name); print name ": " $0 }' |
  sed -E 's/: .*_median +/: /'
