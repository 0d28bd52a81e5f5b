"""The tests are shared out as meant: where they are not, what is slow is made twice, and nothing says so."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from sharing import DATABASES, LONGEST, group_of, place_in_line

TESTS = Path(__file__).parents[1]
TRIED = """
import os
import pytest

@pytest.mark.parametrize("number", range(5))
@pytest.mark.parametrize("database", ["sqlite", "postgresql"])
def test_a_page(database, number):
    with open(os.environ["TOLD"], "a") as told:
        told.write(f"{database} {os.environ['PYTEST_XDIST_WORKER']}\\n")
"""


@pytest.mark.parametrize(
    ("nodeid", "group"),
    [
        ("tests/pages/test_board.py::test_a_row[sqlite]", "sqlite"),
        ("tests/records/test_records_fence.py::test_a_row[7-postgresql-a b]", "postgresql"),
        ("tests/pages/test_x.py::test_a_word[no sqlite here]", "pages/test_x"),
        ("tests/package/test_wheel.py::test_the_wheel", "package"),
        ("tests/benchmarks/test_benchmarks_run.py::test_it[a::b/c.py]", "benchmarks"),
        ("tests/browser/test_whole_path.py::test_it", "browser/test_whole_path"),
        ("tests/core/test_wood.py::TestOak::test_it", "core/test_wood"),
    ],
)
def test_a_test_goes_with_those_that_need_the_same(nodeid, group):
    assert group_of(nodeid) == group


def test_what_takes_longest_is_begun_first():
    groups = ["core/test_wood", "package", "sqlite", "browser/test_every_page"]

    assert sorted(groups, key=place_in_line) == groups[::-1]


def test_what_is_begun_first_is_still_there():
    files = [group_of(f"tests/{path.relative_to(TESTS)}::test") for path in TESTS.glob("*/test_*.py")]

    assert set(LONGEST) <= {*files, *DATABASES}


def test_a_database_is_made_in_one_process_only(tmp_path):
    (tmp_path / "test_tried.py").write_text(TRIED)
    told = tmp_path / "told"

    done = subprocess.run(
        [
            sys.executable,
            "-m",
            "pytest",
            "-n",
            "2",
            "-p",
            "conftest",
            "-p",
            "no:cacheprovider",
            "-c",
            "/dev/null",
            "--rootdir",
            tmp_path,
            tmp_path,
        ],
        env={"PYTHONPATH": f"{TESTS}{os.pathsep}{TESTS.parent / 'service'}", "TOLD": str(told)},
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
    )

    assert done.returncode == 0, done.stdout + done.stderr
    pairs = [line.split() for line in told.read_text().splitlines()]
    assert len(pairs) == 10
    assert len({worker for _, worker in pairs}) == len({tuple(pair) for pair in pairs}) == 2
    assert {line.partition(" was busy for ")[0] for line in done.stdout.splitlines()} >= {"gw0", "gw1"}
