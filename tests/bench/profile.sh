#!/bin/sh
# profile.sh BUILD [JOB…]: where the processor time of each main job goes (docs/performance.md, "Where the time goes").
# BUILD is a release with benchmarks, as run-all.sh makes it; jobs are today, week, away, round, et0_daily, et0_hourly,
# ensemble, wilt_members: all without a JOB. Needs perf (package linux-perf). For each job a table: share of the samples
# by part (profile_parts.txt), of those that are not the kernel's.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
build=$(cd "$1" && pwd)
shift
[ $# -gt 0 ] || set -- today week away round et0_daily et0_hourly ensemble wilt_members
command -v perf >/dev/null || { echo "perf is missing (package linux-perf)"; exit 1; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
noonleaf=$build/cli/noonleaf bench=$build/tests/bench
cp -r "$root/weather_samples/demo" "$work/demo"

gardens() {  # twenty copies of the demo garden
  for number in 01 02 03 04 05 06 07 08 09 10 11 12 13 14 15 16 17 18 19 20; do
    [ -d "$work/gardens/$number" ] || { mkdir -p "$work/gardens"; cp -r "$work/demo" "$work/gardens/$number"; }
    printf '%s ' "$work/gardens/$number"
  done
}

days() {  # a hundred years of invented days
  awk 'BEGIN {
    print "date,tmin_c,tmax_c,rhmin_pct,rhmax_pct,wind_m_s,rs_mj_m2,rain_mm"
    split("31 28 31 30 31 30 31 31 30 31 30 31", length_of)
    for (year = 1901; year <= 2000; ++year) for (month = 1; month <= 12; ++month)
      for (day = 1; day <= length_of[month]; ++day) {
        wave = (year * 37 + month * 101 + day * 53) % 97 / 97
        printf "%d-%02d-%02d,%.1f,%.1f,%.1f,%.1f,%.2f,%.2f,%.1f\n", year, month, day, 8 + 4 * wave, 20 + 6 * wave,
               35 + 10 * wave, 85 + 5 * wave, 1.5 + 2 * wave, 6 + 3 * wave, (wave > 0.7 ? 9 * wave : 0)
      }
  }'
}

hours() {  # ten years of invented hours
  awk 'BEGIN {
    print "time,t_c,rh_pct,wind_m_s,rs_w_m2"
    split("31 28 31 30 31 30 31 31 30 31 30 31", length_of)
    for (year = 1991; year <= 2000; ++year) for (month = 1; month <= 12; ++month)
      for (day = 1; day <= length_of[month]; ++day) for (hour = 0; hour < 24; ++hour) {
        wave = (year * 37 + month * 101 + day * 53 + hour * 29) % 97 / 97
        printf "%d-%02d-%02dT%02d:00Z,%.1f,%.1f,%.2f,%.0f\n", year, month, day, hour, 14 + 6 * wave, 45 + 30 * wave,
               1.5 + 2 * wave, (hour > 8 && hour < 16 ? 150 + 100 * wave : 0)
      }
  }'
}

run() {  # run JOB: often enough for some thousand samples
  case $1 in
    today) for i in 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20; do "$noonleaf" today "$work/demo"; done ;;
    week) for i in 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20; do "$noonleaf" week "$work/demo"; done ;;
    away) for i in 1 2 3 4 5 6 7 8 9 10; do "$noonleaf" away "$work/demo" --from 2025-07-18 --to 2025-07-28; done ;;
    round) for i in 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20; do "$noonleaf" round $(gardens); done ;;
    et0_daily) for i in 1 2 3 4 5 6 7 8 9 10; do "$noonleaf" et0 "$work/days.csv" --latitude 46 --elevation 290; done ;;
    et0_hourly)
      for i in 1 2 3 4 5; do
        "$noonleaf" et0 "$work/hours.csv" --latitude 46 --longitude 0 --elevation 290 --zone UTC --stamps begin
      done
      ;;
    ensemble) "$bench/bench_balance" --benchmark_filter='^batch_members' --benchmark_min_time=3 ;;
    wilt_members) "$bench/bench_heat" --benchmark_filter='^batch_members' --benchmark_min_time=3 ;;
    *) echo "no job is called $1" >&2; exit 1 ;;
  esac >/dev/null 2>"$work/complaints" || { cat "$work/complaints"; exit 1; }
}

only() {  # of the benchmark programs the timed loop alone, not what checks it afterwards
  case $1 in ensemble | wilt_members) echo '::batch' ;; esac
}

if [ "${PROFILED_JOB:-}" ]; then work=$PROFILED_WORK; trap - EXIT; run "$PROFILED_JOB"; exit; fi
days >"$work/days.csv"
hours >"$work/hours.csv"
gardens >/dev/null
for job in "$@"; do
  PROFILED_JOB=$job PROFILED_WORK=$work perf record -q -e cpu-clock:u -F 1999 --call-graph dwarf,32768 \
    -o "$work/samples" sh "$0" "$build" >/dev/null
  perf script --no-inline -i "$work/samples" -F comm,ip,sym 2>/dev/null |
    awk -v job="$job" -v only="$(only "$job")" -f "$here/profile-shares.awk" "$here/profile_parts.txt" -
done
