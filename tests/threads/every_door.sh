#!/bin/sh
# Whether the program of this folder comes by every function that the shared libraries show, of C++ and of C:
# every_door.sh NM CXX PREFIX EXCEPTIONS WORK OBJECT…
# The objects of test_threads are linked to the installed shared libraries of PREFIX. There every call of a shown
# function, from outside and from within the libraries, goes through the dynamic linker, which binds it when it is
# called for the first time and says so (LD_DEBUG). What it never says has not been called. EXCEPTIONS lists functions
# that need not be, one a line with its reason after a tab. CXXFLAGS of the environment are those of the objects.
# Ends with 77 where the linker does not say what it binds.
set -eu
nm=$1 cxx=$2 prefix=$3 exceptions=$4 work=$5
shift 5
unset LD_BIND_NOW
rm -rf "$work"
mkdir -p "$work"
lib=$(dirname "$(find "$prefix" -name libnoonleaf.so)")
libraries="noonleaf noonleaf_readers noonleaf_report noonleaf_c"
# shellcheck disable=SC2046,SC2086  # words are meant
"$cxx" ${CXXFLAGS:-} "$@" -o "$work/every_door" -Wl,-z,lazy \
  -L"$lib" -Wl,-rpath,"$lib" $(printf -- '-l%s ' $libraries) -pthread
LD_DEBUG=bindings,files LD_DEBUG_OUTPUT="$work/bound" "$work/every_door" 1  # threads write lines side by side

# Kernels that the loader picks by processor (type i) are internal: the batch doors call them.
export LC_ALL=C
for library in $libraries; do "$nm" -D --defined-only "$lib/lib$library.so"; done |
  awk '$2 == "T" && $3 ~ /noonleaf/ { sub(/@.*/, "", $3); print $3 }' | sort -u >"$work/shown"
# What is bound before the program begins to run are addresses, not calls.
sed -n '/transferring control/,$p' "$work"/bound.* | grep -o "normal symbol \`[^']*'" |
  sed "s/.*\`//; s/'$//" | sort -u >"$work/called" || true
grep -q noonleaf "$work/called" || { echo "skipped: the dynamic linker says nothing of what it binds"; exit 77; }
[ "$(wc -l <"$work/shown")" -gt 300 ] || { echo "FAILED: too few functions shown: $(wc -l <"$work/shown")"; exit 1; }

# A constructor has two names for one function, so names are compared as a person reads them.
c++filt <"$work/shown" | sort -u >"$work/shown_names"
c++filt <"$work/called" | sort -u >"$work/called_names"
comm -23 "$work/shown_names" "$work/called_names" >"$work/left"
cut -f 1 "$exceptions" | grep -v '^#' | sort -u >"$work/excepted" || true
if grep -v '^#' "$exceptions" | grep -v "$(printf '\t').\{10,\}"; then
  echo "FAILED: the exception above has no reason"
  exit 1
fi
failed=0
if comm -23 "$work/left" "$work/excepted" | grep .; then
  echo "FAILED: no thread calls the public functions above; add them to a door in tests/threads"
  failed=1
fi
if comm -13 "$work/left" "$work/excepted" | grep .; then
  echo "FAILED: the exceptions above are called, or gone: take them off the list"
  failed=1
fi
[ $failed -eq 0 ] || exit 1
echo "$(wc -l <"$work/shown_names") public functions, $(wc -l <"$work/excepted") excepted," \
  "all others called by threads at once"
