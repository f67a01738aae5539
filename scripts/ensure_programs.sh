#!/bin/sh
# Programs that the tests run and pip cannot bring. Root on Debian gets those that are missing.
set -eu

missing=""
have() { for name in "$@"; do command -v "$name" >/dev/null 2>&1 && return 0; done; return 1; }
[ -n "${CHROMIUM:-}" ] || have chromium chromium-browser google-chrome || missing="chromium"
[ -n "$missing" ] || exit 0

if [ "$(id -u)" = 0 ] && have apt-get; then
    echo "The tests need: $missing. Installing from Debian."
    export DEBIAN_FRONTEND=noninteractive
    apt-get update -qq
    # shellcheck disable=SC2086 # a list of packages
    apt-get install -y -qq --no-install-recommends $missing >/dev/null
else
    echo "The tests need: $missing. On Debian or Ubuntu: sudo apt-get install $missing" >&2
    exit 1
fi
