#!/bin/sh
# Programs that the tests run and pip cannot bring: a browser for the pages, LibreOffice for the
# workbooks, PostgreSQL for the workspace's second database. Root on Debian gets those that are missing (some 20 seconds); others are told.
set -eu

have() {
    for name in "$@"; do
        if command -v "$name" >/dev/null 2>&1; then return 0; fi
    done
    return 1
}

missing=""
[ -n "${CHROMIUM:-}" ] || have chromium chromium-browser google-chrome || missing="chromium"
[ -n "${SOFFICE:-}" ] || have soffice libreoffice || missing="$missing libreoffice-calc-nogui"
have initdb || ls /usr/lib/postgresql/*/bin/initdb >/dev/null 2>&1 || missing="$missing postgresql"
[ -n "$missing" ] || exit 0

echo "The tests need: $missing"
if [ "$(id -u)" = 0 ] && have apt-get; then
    export DEBIAN_FRONTEND=noninteractive
    apt-get update -qq
    # shellcheck disable=SC2086 # a list of packages
    apt-get install -y -qq --no-install-recommends $missing >/dev/null
else
    echo "On Debian or Ubuntu: sudo apt-get install $missing" >&2
    echo "Elsewhere: set CHROMIUM and SOFFICE to the two programs, have initdb on the path." >&2
    exit 1
fi
