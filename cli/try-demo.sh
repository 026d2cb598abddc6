#!/bin/sh
# Installs what is missing, builds noonleaf, and answers the day's question for the invented demo garden.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
. "$root/.ci/prepare.sh"

install_packages
build build noonleaf_cli -DNOONLEAF_TESTS=OFF -DCMAKE_BUILD_TYPE=Release

noonleaf="$root/build/cli/noonleaf"
garden=$(mktemp -d)/demo-garden
say "3. Making the invented demo garden and asking what to open today …"
say ""
"$noonleaf" new "$garden" --demo >/dev/null
"$noonleaf" today "$garden"
say ""
say "The garden folder is $garden; the command is build/cli/noonleaf."
say "Next: build/cli/noonleaf --help, or docs/manual.md."
