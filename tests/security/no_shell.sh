# no_shell.sh COMMAND HARDENED SOURCE_FOLDER   nothing of ours starts another program or loads code by name
set -eu
command=$1 source=$3
forbidden='system|popen|execl|execle|execlp|execv|execve|execvp|execvpe|fexecve|fork|vfork|clone'
forbidden="$forbidden|posix_spawn|posix_spawnp|wordexp|dlopen"

faults=0
if command -v nm > /dev/null; then
  asked=$(nm -D --undefined-only "$command" | sed 's/.* U //; s/@.*//')
  # The list must be one that could hold such a name: the command opens files.
  if ! printf '%s\n' "$asked" | grep -Eqx 'open|open64|fopen|fopen64'; then
    echo "nm shows no call that opens a file: the list cannot be trusted"
    faults=1
  fi
  if printf '%s\n' "$asked" | grep -Ex "$forbidden"; then
    echo "the command asks for the calls above"
    faults=1
  fi
else
  echo "nm is missing (Debian: binutils): the program was not looked at, only its sources"
fi

if grep -rnE "(^|[^A-Za-z0-9_.>])(::)?(std::)?($forbidden) *\(" "$source/lib" "$source/cli" \
     --include=*.cpp --include=*.hpp --include=*.h --include=*.in; then
  echo "a source asks for the calls above"
  faults=1
fi

# What it does: a whole garden, watched.
if command -v strace > /dev/null && strace -o /dev/null true 2> /dev/null; then
  work=$(mktemp -d)
  trap 'rm -rf "$work"' EXIT
  "$command" new "$work/g" --demo > /dev/null
  for words in "today $work/g" "week $work/g --format html --out $work/w.html" "check $work/g" \
               "log $work/g note done --date 2025-07-16" "round $work/g" \
               "et0 $work/g/weather/station_2025.csv --latitude 46 --elevation 290"; do
    strace -f -e trace=execve,execveat,fork,vfork,socket,connect -o "$work/trace" \
      "$command" $words > /dev/null 2>&1
    if [ "$(grep -c 'execve(' "$work/trace")" -ne 1 ] || grep -E 'execveat|fork\(|socket\(|connect\(' "$work/trace"; then
      echo "noonleaf $words: another program was started, or the network was asked"
      grep -v '+++' "$work/trace"
      faults=1
    fi
  done
else
  echo "strace is missing or may not watch: the command was not watched"
  [ $faults -eq 1 ] || exit 77
fi
exit $faults
