"""Every benchmark script still runs; how fast it finds the core is not tested here."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

HERE = Path(__file__).parent
SCRIPTS = sorted(HERE.glob("bench_*.py"))


def test_there_are_benchmarks_to_run():
    assert SCRIPTS != []


@pytest.mark.parametrize("script", SCRIPTS, ids=lambda script: script.name)
def test_a_benchmark_runs_and_prints_its_targets(script):
    surroundings = {**os.environ, "PYTHONPATH": f"{HERE.parents[1] / 'service'}:{HERE.parent}"}

    done = subprocess.run(
        [sys.executable, script, "--quick"], capture_output=True, text=True, check=False, env=surroundings
    )

    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("figure")
    assert done.stdout.count("\n") > 2
