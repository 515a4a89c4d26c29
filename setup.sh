#!/bin/sh
# Sets promptprep up on a bare machine and runs it.
#   sh setup.sh demo   install, prepare the demo, say where to look
#   sh setup.sh test   install with the test dependencies and Chromium, run all tests
#   sh setup.sh dev    as test, with the formatter and the type checker, but run nothing
# What it puts on the system it says first. Run it again at any time: the second time takes seconds.
set -eu

cd "$(dirname "$0")"
UV_VERSION=0.13.9
mode=${1:-}
case $mode in
demo | test | dev) ;;
*)
    echo "usage: sh setup.sh demo | test | dev" >&2
    exit 2
    ;;
esac

say() { printf '%s\n' "$*"; }
stop() {
    printf 'setup: %s\n' "$*" >&2
    exit 2
}

find_python() {
    for name in python3 python3.13 python3.12 python3.11; do
        if command -v "$name" >/dev/null 2>&1 &&
            "$name" -c 'import sys; sys.exit(not (3, 11) <= sys.version_info[:2] < (3, 14))' 2>/dev/null; then
            command -v "$name"
            return
        fi
    done
}

as_root() {
    if [ "$(id -u)" = 0 ]; then
        "$@"
    elif command -v sudo >/dev/null 2>&1; then
        sudo "$@"
    else
        stop "these need root or sudo: $*"
    fi
}

missing_debs() {
    for deb in "$@"; do
        dpkg-query -W -f '${Status}' "$deb" 2>/dev/null | grep -q 'ok installed' || printf '%s ' "$deb"
    done
}

is_ubuntu() { grep -qs '^ID=ubuntu' /etc/os-release; }

debian_setup() {
    # Pango draws the printed pages; the venv module is a package of its own on Debian.
    want="python3 libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0"
    if [ ! -x .venv/bin/python ] && ! { [ -n "$python" ] && "$python" -c 'import ensurepip, venv' 2>/dev/null; }; then
        want="$want python3-venv"
    fi
    # The browser's driver needs libatomic, and a test applies a patch as a user would.
    if [ "$mode" != demo ]; then want="$want libatomic1 patch"; fi
    # Ubuntu's chromium package is a snap, which no container runs: there Playwright brings its own.
    if [ "$mode" != demo ] && ! is_ubuntu; then want="$want chromium"; fi
    # shellcheck disable=SC2086  # a list of words is meant
    need=$(missing_debs $want)
    [ -z "$need" ] && return
    say "This puts system packages on the machine with apt-get: $need"
    as_root apt-get update -qq
    # shellcheck disable=SC2086
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $need
}

mac_setup() {
    command -v brew >/dev/null 2>&1 || stop "Homebrew is missing: install it from its own site, then run this again"
    need=""
    [ -n "$python" ] || need="$need python@3.12"
    brew list pango >/dev/null 2>&1 || need="$need pango"
    [ -z "$need" ] && return
    say "This puts packages on the machine with Homebrew:$need"
    # shellcheck disable=SC2086
    brew install $need
}

python=$(find_python)
if command -v apt-get >/dev/null 2>&1 && command -v dpkg-query >/dev/null 2>&1; then
    debian_setup
elif [ "$(uname -s)" = Darwin ]; then
    mac_setup
else
    [ -n "$python" ] || stop "Python 3.11 to 3.13 is missing"
    "$python" -c 'import ensurepip, venv' 2>/dev/null || stop "Python's venv module is missing"
    "$python" -c 'import ctypes.util as u, sys; sys.exit(not u.find_library("pango-1.0"))' ||
        stop "the library Pango 1.44 or newer is missing"
fi
python=$(find_python)
[ -n "$python" ] || stop "Python 3.11 to 3.13 is missing, and the system's packages have none"

case $mode in
demo) groups="" ;;
test) groups="--group test" ;;
dev) groups="--group test --group dev" ;;
esac

stamp=.venv/promptprep-setup
[ -x .venv/bin/python ] || "$python" -m venv .venv
wanted="$(cat uv.lock pyproject.toml setup.sh | cksum) $groups"
if ! grep -qsxF "$wanted" "$stamp"; then
    say "Installing into $(pwd)/.venv from the hash-pinned lock file ..."
    .venv/bin/python -m pip install -q --disable-pip-version-check "uv==$UV_VERSION"
    # shellcheck disable=SC2086
    UV_PROJECT_ENVIRONMENT=.venv .venv/bin/uv sync -q --frozen --inexact --all-extras $groups
    if [ "$mode" != demo ] && is_ubuntu && [ ! -x /usr/bin/chromium ]; then
        .venv/bin/playwright install --with-deps chromium
    fi
    printf '%s\n' "$wanted" >>"$stamp"
fi

case $mode in
demo)
    .venv/bin/promptprep demo --out promptprep-demo
    ;;
test)
    exec .venv/bin/python -m pytest -n 2 --dist loadfile
    ;;
dev) say "Ready: .venv/bin holds promptprep, pytest, ruff and mypy." ;;
esac
