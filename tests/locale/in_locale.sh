#!/bin/sh
# Runs a program in a locale with a decimal comma: in_locale.sh FOLDER ADOPT_LIBRARY PROGRAM WORD…
# With an empty ADOPT_LIBRARY the environment alone says so, and the program adopts no locale. The locale is made in
# FOLDER, at the first run. Ends with 77 where the machine cannot make one.
set -eu
folder=$1 adopt=$2
shift 2
locale=$folder/comma_DE.UTF-8
if [ ! -f "$locale/LC_NUMERIC" ]; then
  command -v localedef >/dev/null || { echo "skipped: no localedef"; exit 77; }
  [ -f /usr/share/i18n/locales/de_DE ] || { echo "skipped: the package locales is missing"; exit 77; }
  mkdir -p "$folder"
  new=$(mktemp -d "$folder/new-XXXXXX")
  # Warnings of the locale's source are not ours; without its files it did not work.
  localedef -f UTF-8 -i de_DE "$new/made" 2>/dev/null || true
  # Another test may have been quicker: then its locale is kept.
  mv -T "$new/made" "$locale" 2>/dev/null || true
  rm -rf "$new"
  [ -f "$locale/LC_NUMERIC" ] || { echo "localedef made no locale"; exit 1; }
fi
export LOCPATH="$folder" LC_ALL=comma_DE.UTF-8
[ -z "$adopt" ] || export LD_PRELOAD="$adopt"
exec "$@"
