#!/bin/sh
# Prints every sheet in headless Chromium on Letter and A4 and looks at the result: look-at-pages.mjs says what for.
# Exit code 77: this machine lacks the browser or the npm packages, and nothing was looked at.
set -eu
sheets=$1
here=$(cd "$(dirname "$0")" && pwd)
skip() { echo "SKIPPED, no page was looked at: $1"; exit 77; }
command -v node >/dev/null 2>&1 || skip "there is no node"
browser=$(command -v chromium || command -v chromium-browser || true)
[ -n "$browser" ] || skip "there is no chromium"
command -v pdftotext >/dev/null 2>&1 || skip "there is no pdftotext (poppler-utils)"
tools="$sheets/../node"
if [ ! -d "$tools/node_modules/axe-core" ] || [ ! -d "$tools/node_modules/playwright-core" ]; then
  command -v npm >/dev/null 2>&1 || skip "there is no npm"
  mkdir -p "$tools"
  (cd "$tools" && npm install --silent --no-save --no-audit --no-fund playwright-core@1 axe-core@4 >/dev/null 2>&1) ||
    skip "npm could not install playwright-core and axe-core"
fi
exec env BROWSER="$browser" TOOLS="$tools" node "$here/look-at-pages.mjs" "$sheets"
