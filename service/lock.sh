#!/bin/sh
# Writes the requirements files anew from pyproject.toml: service/lock.sh, or service/lock.sh --upgrade for the newest
# versions. They pin every package with its hashes, for Python 3.11 and up on every system, and name no registry.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/service/boot.sh"

find_python
get_uv
cd "$root"

lock() {
    "$uv" --quiet pip compile --universal --python-version 3.11 --python "$python" --only-binary :all: \
        --generate-hashes --no-header --no-annotate --no-emit-index-url "$@"
}

lock pyproject.toml --output-file requirements.txt "${@}"
lock pyproject.toml --group dev --constraints requirements.txt --output-file requirements-dev.txt "${@}"
lock --group bootstrap --output-file requirements-uv.txt "${@}"
