#!/bin/sh
# install.sh static BUILD | install.sh shared: an installed copy in an empty PREFIX.
# `static` installs what BUILD has built; `shared` builds the libraries anew, since one build has one kind of library.
# From the environment: SOURCE, PREFIX, WORK, CXX.
set -eu
rm -rf "$PREFIX"
case $1 in
  static) build=$2 ;;
  shared)
    build="$WORK"
    cmake -G Ninja -S "$SOURCE" -B "$build" -DCMAKE_CXX_COMPILER="$CXX" -DBUILD_SHARED_LIBS=ON -DNOONLEAF_CLI=OFF \
      -DNOONLEAF_TESTS=OFF -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG=-O0
    cmake --build "$build"
    ;;
esac
cmake --install "$build" --prefix "$PREFIX" >/dev/null
find "$PREFIX" -not -type d -not -path '*/include/*' | sort
