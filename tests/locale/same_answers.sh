#!/bin/sh
# The answers of the command in a locale with a decimal comma, against those in the C locale, byte by byte:
# same_answers.sh NOONLEAF DEMO_FOLDER WORK FOLDER ADOPT_LIBRARY
set -eu
command=$1 demo=$2 work=$3 folder=$4 adopt=$5
in_locale="$(cd "$(dirname "$0")" && pwd)/in_locale.sh"
unset LANG LANGUAGE LC_NUMERIC 2>/dev/null || true
rm -rf "$work"
mkdir -p "$work/point" "$work/comma"
printf 'can,depth_mm,x_m,y_m\n1,6.5,0,0\n2,8.25,1,0\n3,5.75,0,1\n4,9.5,1,1\n5,7,0.5,2\n' >"$work/cans.csv"
printf 'date,tmax_c,tmin_c,ea_kpa,rs_mj_m2,wind_m_s\n2023-07-06,21.5,12.3,1.409,22.07,2.078\n' >"$work/days.csv"

# Each line is one call; DEMO is a copy of the demo garden, so that the journal may be written to. The command adopts no
# locale of its own; here it does, so that the library under it is tried too. Not in the lines with ~: CLI11 2.1 reads
# numbers of options with strtold, which follows an adopted locale, so these see the environment alone, as a user's would.
cat >"$work/calls" <<'END'
today DEMO
today DEMO --lang es
today DEMO --format json
week DEMO
week DEMO --lang es
week DEMO --format json
week DEMO --format csv
week DEMO --format html
week DEMO --format ics
away DEMO --from 2025-07-18 --to 2025-07-22
away DEMO --from 2025-07-18 --to 2025-07-22 --format json
ledger DEMO --from 2025-06-01 --to 2025-07-16
ledger DEMO --from 2025-06-01 --to 2025-07-16 --format json
check DEMO
check DEMO --format json
explain DEMO a 2025-07-14
explain DEMO a 2025-07-14 --format json
~ et0 days.csv --latitude 50.8 --elevation 100
~ et0 days.csv --latitude 50.8 --elevation 100 --detail --precision 6
~ cans cans.csv --minutes 22.5
~ cans cans.csv --minutes 22.5 --format json
~ cans cans.csv --minutes 22.5 --format svg
crops
crops tomato
crops tomato --format json
crops tomato --format svg
soils
soils --format json
~ soils --sand 40.5 --clay 20.25
~ outdoors --t-f 96.5 --rh 41.5
~ log DEMO water a --minutes 12.5 --at 06:30 --date 2025-07-15
~ log DEMO rain --rain-mm 3.5 --date 2025-07-15
today DEMO --format json
et0 days.csv --latitude north --elevation 100
END

ask() {  # ask point|comma: answers of all calls, one after the other
  cd "$work/$1"
  cp -r "$demo" DEMO
  chmod -R u+w DEMO
  cp "$work/cans.csv" "$work/days.csv" .
  while read -r line; do
    own=$adopt
    case $line in "~ "*) line=${line#"~ "} own="" ;; esac
    echo "== $line"
    code=0
    # shellcheck disable=SC2086  # words are meant
    if [ "$1" = comma ]; then
      sh "$in_locale" "$folder" "$own" "$command" $line 2>&1 </dev/null || code=$?
    else
      LC_ALL=C "$command" $line 2>&1 </dev/null || code=$?
    fi
    [ "$code" -ne 77 ] || exit 77
    echo "-- ended with $code"
  done <"$work/calls"
  cat DEMO/journal.csv
}

(ask comma) >"$work/comma.txt" || { tail -n 2 "$work/comma.txt"; exit 77; }
(ask point) >"$work/point.txt"
answered=$(grep -c '^-- ended with 0' "$work/point.txt" || true)
asked=$(wc -l <"$work/calls")
[ "$answered" -ge $((asked - 1)) ] || { grep -B3 '^-- ended with [1-9]' "$work/point.txt"; exit 1; }
diff "$work/point.txt" "$work/comma.txt" || exit 1
echo "$asked calls, $answered done: the same $(wc -c <"$work/point.txt") bytes in both locales"
