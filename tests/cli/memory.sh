#!/bin/sh
# A command on the demo garden under valgrind: memory that was never written, freed, or lost is an error.
#   memory.sh COMMAND WORD…    Ends with 77 where valgrind is not installed.
# valgrind shows the program a processor without AVX-512, so that the functions picked at load time are those of AVX2.
set -eu
command=$1
shift
command -v valgrind >/dev/null || { echo "not run: valgrind is not there (Debian package valgrind)"; exit 77; }
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
cd "$place"
"$command" new g --demo >/dev/null
status=0
valgrind -q --error-exitcode=99 --leak-check=full --errors-for-leak-kinds=definite,indirect \
  "$command" "$@" >answer 2>said || status=$?
if [ "$status" -ne 0 ] || [ ! -s answer ]; then
  echo "ended with $status"
  cat said
  exit 1
fi
