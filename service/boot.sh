# shellcheck shell=sh
# Read by ./run, ./check and service/lock.sh, which set $root to the folder of the checkout.
#
#   set_up run   makes .venv with the packages of requirements.txt
#   set_up dev   the same with requirements-dev.txt, which contains them; what it makes serves `run` as well; and
#                Chromium for the browser tests, from Debian's packages where this user may install them
#   get_uv       sets $uv, the package installer to use, bringing it into .tools if the machine has none
#
# A set-up that is there already costs a few milliseconds. Otherwise whatever is missing is fetched, from Python
# itself upwards, and the new .venv is made aside and put in place whole: one that stops half-way changes nothing.

PATH=${PATH:+$PATH:}/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin
export PATH

say() { printf 'casewright: %s\n' "$*" >&2; }
fail() { say "$*"; exit 2; }

set_up() {
    : "${root:?}"
    is_set_up "$1" || ( cd "$root" && make_venv "$1" ) || exit
    if [ "$1" = dev ]; then bring_browser; fi
}

is_set_up() {
    [ -x "$root/.venv/bin/python" ] && [ "$(state)" = "$(cat "$root/.venv/made-for-$1" 2>/dev/null)" ] || return
    [ -z "${PYTHON:-}" ] || [ "$PYTHON" = "$(cat "$root/.venv/made-by")" ]
}

# What a .venv is made from: another lock makes another state.
state() { cat "$root/requirements.txt" "$root/requirements-dev.txt" | cksum; }

make_venv() {
    if ! [ -w . ] || ! mkdir -p .tools; then fail "$root cannot be written to; set it up once as a user who may."; fi
    exec 9>.tools/lock
    if command -v flock >/dev/null; then flock 9; fi
    if is_set_up "$1"; then return; fi # by another start, while this one waited
    say "setting up (once) ..."
    find_python
    get_uv
    wanted=requirements.txt
    # Who had the tools of development keeps them when ./run brings newer packages.
    if [ "$1" = dev ] || [ -e .venv/made-for-dev ]; then wanted=requirements-dev.txt; fi
    rm -rf .tools/venv
    # By its last name, python3.11 and not python3: a system that moves on to 3.12 then gets a new .venv.
    final=$("$python" -c 'import os, sys; print(os.path.realpath(sys.executable))')
    "$uv" --quiet venv --relocatable --no-project --prompt casewright --python "$final" .tools/venv ||
        fail "An environment for $python could not be made: see above."
    "$uv" --quiet pip sync --require-hashes --only-binary :all: --python .tools/venv/bin/python "$wanted" ||
        fail "The packages of $wanted could not be installed: see above. Is this machine online?"
    printf '%s\n' "$python" >.tools/venv/made-by
    state >.tools/venv/made-for-run
    if [ "$wanted" = requirements-dev.txt ]; then state >.tools/venv/made-for-dev; fi
    rm -rf .tools/old
    if [ -e .venv ]; then mv .venv .tools/old; fi
    mv .tools/venv .venv || fail "The new .venv could not be put in place: see above."
    rm -rf .tools/old
}

get_uv() {
    use_certificates
    use_cache
    if uv --version >/dev/null 2>&1; then
        uv=uv
    else
        uv=$root/.tools/uv/bin/uv
        has_own_uv || ( cd "$root" && bring_uv ) || exit
    fi
}

has_own_uv() { [ -x "$uv" ] && cmp -s "$root/requirements-uv.txt" "$root/.tools/uv/made-from"; }

# Machines behind a proxy that opens connections have its certificate in the system's store and nowhere else.
use_certificates() {
    store=/etc/ssl/certs/ca-certificates.crt
    [ -e "$store" ] || return 0
    export UV_SYSTEM_CERTS="${UV_SYSTEM_CERTS:-1}" PIP_CERT="${PIP_CERT:-${REQUESTS_CA_BUNDLE:-$store}}"
}

# A user without a home of their own keeps the downloads in the checkout.
use_cache() {
    [ -z "${UV_CACHE_DIR:-}" ] || return 0
    cache=${XDG_CACHE_HOME:-${HOME:+$HOME/.cache}}
    if [ -n "$cache" ] && mkdir -p "$cache/uv" 2>/dev/null && [ -w "$cache/uv" ]; then return; fi
    export UV_CACHE_DIR="$root/.tools/cache"
}

find_python() {
    if [ -n "${PYTHON:-}" ]; then
        python=$PYTHON
        is_fit || fail "PYTHON=$PYTHON is not a Python 3.11 or newer with ssl, sqlite3 and venv; name another one."
        return
    fi
    search_python || { apt_get python3 ca-certificates && search_python; } ||
        fail "Python 3.11 or newer with ssl, sqlite3 and venv is needed: install it, or name one with PYTHON=... ."
}

search_python() {
    for python in python3 python3.14 python3.13 python3.12 python3.11; do
        if is_fit; then return; fi
    done
    python=$(uv python find --no-project '>=3.11' 2>/dev/null) && is_fit
}

is_fit() {
    "$python" -c 'import sys, ssl, sqlite3, venv; sys.exit(sys.version_info < (3, 11))' >/dev/null 2>&1
}

has() { "$python" -c "import $1" >/dev/null 2>&1; }

bring_uv() {
    find_python
    has pip || has ensurepip || { apt_get python3-venv && has ensurepip; } ||
        fail "$python has neither pip nor ensurepip: install uv, python3-pip or python3-venv, and start again."
    mkdir -p .tools
    rm -rf .tools/uv .tools/pip
    pip=$python
    if ! has pip; then
        pip=.tools/pip/bin/python
        "$python" -m venv .tools/pip || fail "$python could not make an environment to install uv with: see above."
    fi
    PIP_USER=0 PIP_ROOT_USER_ACTION=ignore "$pip" -m pip -qq --disable-pip-version-check install --no-cache-dir \
        --require-hashes --only-binary :all: --target .tools/uv -r requirements-uv.txt >&2 ||
        fail "uv could not be installed into .tools: see above. Is this machine online?"
    cp requirements-uv.txt .tools/uv/made-from
    rm -rf .tools/pip
}

# What the browser tests start: Chromium, and Playwright's own Node, which wants a library that a bare Debian lacks.
# All other work goes on without them, so this says what is missing, and the browser tests then fail.
bring_browser() {
    [ -z "${CASEWRIGHT_CHROMIUM:-}" ] || command -v "$CASEWRIGHT_CHROMIUM" >/dev/null ||
        fail "CASEWRIGHT_CHROMIUM=$CASEWRIGHT_CHROMIUM is not a program that can be started; name another one."
    missing=$(lacking_for_browser)
    [ -n "$missing" ] || return 0
    say "installing $missing for the browser tests (once) ..."
    # shellcheck disable=SC2086
    if apt_get $missing; then missing=$(lacking_for_browser); fi
    [ -z "$missing" ] ||
        say "The browser tests will fail: install $missing, or name a Chromium with CASEWRIGHT_CHROMIUM=... ."
}

lacking_for_browser() {
    set -- "$root"/.venv/lib/python3*/site-packages/playwright/driver/node
    lacking=
    command -v "${CASEWRIGHT_CHROMIUM:-chromium}" >/dev/null || lacking=chromium
    "$1" --version >/dev/null 2>&1 || lacking="${lacking:+$lacking }libatomic1"
    echo "$lacking"
}

# Debian's packages, where this user may install them: as root, or with a sudo that asks for no password.
apt_get() {
    command -v apt-get >/dev/null || return
    if [ "$(id -u)" = 0 ]; then sudo=; elif sudo -n true 2>/dev/null; then sudo='sudo -n'; else return 1; fi
    mkdir -p "$root/.tools"
    for task in 'update' "install --yes --no-install-recommends $*"; do
        # shellcheck disable=SC2086
        $sudo env DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=120 $task \
            >"$root/.tools/apt.log" 2>&1 </dev/null || { cat "$root/.tools/apt.log" >&2; return 1; }
    done
}
