#!/bin/sh
# check-shapes.sh COMMAND SCHEMAS: the commands' JSON against the published shapes, by a validator of somebody else
# (python3-jsonschema). Exit code 77: it is not on this machine.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
python=/usr/bin/python3
[ -x "$python" ] && "$python" -c 'import jsonschema' 2>/dev/null ||
  { echo "SKIPPED, no shape was checked: no python3-jsonschema"; exit 77; }
exec "$python" "$here/check-shapes.py" "$1" "$2"
