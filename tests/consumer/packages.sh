#!/bin/sh
# packages.sh DEB|TGZ BUILD: a package of what BUILD has built, unpacked into an empty root and used from there.
# From the environment: SOURCE, WORK (a folder to make anew). Ends with 77 where the machine cannot make it.
set -eu
kind=$1 build=$2
skip() { echo "skipped: $*"; exit 77; }
fail() { echo "FAILED: $*"; exit 1; }
rm -rf "$WORK"
mkdir -p "$WORK/root"
cd "$WORK"

if [ "$kind" = DEB ]; then
  for program in dpkg-deb dpkg-shlibdeps; do command -v $program >/dev/null || skip "no $program"; done
fi
cpack -G "$kind" --config "$build/CPackConfig.cmake" -B "$WORK" >log 2>&1 || { cat log; fail "cpack -G $kind"; }

case $kind in
  DEB)
    for package in noonleaf noonleaf-dev; do
      file=$(find . -maxdepth 1 -name "${package}_*.deb")
      dpkg-deb -x "$file" root
      dpkg-deb -f "$file" Package Version Section Architecture Depends Description
    done
    dpkg-deb -f "$(find . -maxdepth 1 -name 'noonleaf_*.deb')" Depends | grep -q 'libfmt' ||
      fail "a library that the command needs is no dependency"
    dpkg-deb -c "$(find . -maxdepth 1 -name 'noonleaf_*.deb')" | grep -q 'include' &&
      fail "headers in the package of the command"
    prefix=root/usr
    ;;
  TGZ)
    tar -xzf "$(find . -maxdepth 1 -name '*.tar.gz')" -C root --strip-components=1
    prefix=root
    ;;
esac

for file in bin/noonleaf share/man/man1/noonleaf.1 share/bash-completion/completions/noonleaf \
            share/zsh/vendor-completions/_noonleaf share/doc/noonleaf/copyright share/doc/noonleaf/LICENSE \
            include/noonleaf/error.hpp lib/pkgconfig/noonleaf.pc lib/cmake/noonleaf/noonleafConfig.cmake; do
  [ -e "$prefix/$file" ] || [ -e "$prefix/$file.gz" ] || fail "$file is not in the package"
done
"$prefix/bin/noonleaf" --version
"$prefix/bin/noonleaf" new demo --demo >/dev/null
"$prefix/bin/noonleaf" today demo >found.txt
cmp "$SOURCE/tests/cli/golden/today_demo.txt" found.txt
find "$prefix" -type f | wc -l
