#!/bin/sh
# read-pages.sh man|bash|zsh PAGES: what is installed beside the command, read by the programs it is made for.
# Ends with 77 where the machine has no such program.
set -eu
what=$1 pages=$2
skip() { echo "skipped: $*"; exit 77; }
fail() { echo "FAILED: $*"; exit 1; }

# completes LINE EXPECTED: the last word of LINE is completed by bash; the answers, sorted, are EXPECTED.
completes() {
  found=$(bash -c '. "$1"; COMP_WORDS=($2); case $2 in *" ") COMP_WORDS+=("") ;; esac
    COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _noonleaf; printf "%s\n" "${COMPREPLY[@]}" | sort | tr "\n" " "' \
    bash "$pages/noonleaf" "$1")
  [ "$found" = "$2 " ] || fail "\"$1\" is completed to \"$found\", not \"$2\""
}

case $what in
  man)
    command -v man >/dev/null || skip "no man"
    complaints=$(man --warnings=w -E UTF-8 -l -Tutf8 -Z "$pages/noonleaf.1" 2>&1 >/dev/null)
    [ -z "$complaints" ] || fail "$complaints"
    MANWIDTH=80 man -E UTF-8 -l "$pages/noonleaf.1" | col -b >page.txt
    for words in "noonleaf week DIR" "html to print, csv to fill in" "noonleaf et0 WEATHER.csv" "EXIT STATUS"; do
      grep -q -- "$words" page.txt || fail "the page does not say \"$words\""
    done
    ;;
  bash)
    command -v bash >/dev/null || skip "no bash"
    place=$(mktemp -d)
    trap 'rm -rf "$place"' EXIT
    cd "$place"
    mkdir garden
    : >garden.csv
    completes "noonleaf to" "today"
    completes "noonleaf week garden --fo" "--format"
    completes "noonleaf week garden --format " "csv html ics json text"
    completes "noonleaf week garden --format h" "html"
    completes "noonleaf week garden --format = h" "html"
    completes "noonleaf week g" "garden"
    completes "noonleaf week --days 3 g" "garden"
    completes "noonleaf week --out gard" "garden garden.csv"
    completes "noonleaf week garden --days " ""
    completes "noonleaf log garden mu" "mulch"
    completes "noonleaf log --who me garden --feel sl" "slightly_moist"
    completes "noonleaf round garden g" "garden"
    ;;
  zsh)
    command -v zsh >/dev/null || skip "no zsh"
    # The function with zsh's own machinery replaced by one that shows what it is given.
    zsh -f -c 'compdef() { :; }
      _describe() { print -l -- ${(P)2}; }
      _arguments() { if [[ $1 == -C ]]; then line=($words); state=${next}; else print -l -- "$@"; fi; }
      words=(); next=command; source "$1" >commands.txt
      words=(week); next=argument; _noonleaf >week.txt' zsh "$pages/_noonleaf"
    grep -q '^today:' commands.txt || fail "the commands are not offered"
    grep -qxF -- '--lang[language of the sheet]:ENUM:(en es)' week.txt || fail "the options of week are not offered"
    grep -qxF -- ':DIR:_directories' week.txt || fail "the folder of week is not offered"
    zsh -f "$(dirname "$0")/zsh-tab.zsh" "$pages"  # and the whole of it, by the TAB key
    ;;
esac
