# hardened.sh COMMAND HARDENED   what docs/security.md says of release builds, read from the program itself
set -eu
command=$1 hardened=$2
if [ "$hardened" != ON ]; then
  echo "not run: this build is a Debug build, watches itself, or has NOONLEAF_HARDENING off"
  exit 77
fi
for tool in readelf nm objdump; do
  if ! command -v $tool > /dev/null; then
    echo "not run: $tool is missing (Debian: binutils)"
    exit 77
  fi
done

faults=0
# expect WHAT TEXT PATTERN: a line of the text matches
expect() {
  if printf '%s\n' "$2" | grep -Eq "$3"; then
    echo "found: $1"
  else
    echo "MISSING: $1"
    faults=1
  fi
}

header=$(readelf -hW "$command")
segments=$(readelf -lW "$command")
dynamic=$(readelf -dW "$command")
symbols=$(nm -D "$command")
expect "a program that the loader puts anywhere (PIE)" "$header" 'Type: +DYN'
expect "marked as one" "$dynamic" '\(FLAGS_1\).*PIE'
expect "tables read-only after loading (relro)" "$segments" 'GNU_RELRO'
expect "all of them filled before the start (now)" "$dynamic" '\(FLAGS(_1)?\).*NOW'
expect "a stack that is not run as code" "$segments" 'GNU_STACK +([0-9a-fx]+ +){5}RW +'
expect "guarded stack frames" "$symbols" ' U __stack_chk_fail'
expect "checked calls of the C library" "$symbols" ' U __[a-z]+_chk(@|$)'
if printf '%s\n' "$segments" | grep -Eq ' RWE '; then
  echo "MISSING: no memory that is both written and run"
  faults=1
fi
expect "checked indices of the standard library" "$(nm -D -C "$command")" ' U std::__glibcxx_assert_fail\('
if [ "$(uname -m)" = x86_64 ]; then  # the note of the whole program is lost where the C library's start has none
  targets=$(objdump -d "$command" | grep -c endbr64 || true)
  expect "marked jump targets (cf-protection): $targets" "$targets" '[0-9]{3}'
fi
exit $faults
