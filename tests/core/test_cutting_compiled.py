"""Kernels that are kept between runs, and when they are not used any more."""

import shutil
import subprocess
import sys
from pathlib import Path

import casewright

CALLED = """from casewright.cutting.compiled import compiled


@compiled
def called() -> int:
    return {}
"""
CALLS = """from casewright.cutting.compiled import compiled
from casewright.cutting.lengths.called import called


@compiled
def calls() -> int:
    return called()


print(calls())
"""


def test_a_kernel_follows_those_that_it_calls(tmp_path: Path) -> None:
    """numba alone would answer 1 again: the file of the kernel that is called first did not change."""
    package = tmp_path / "casewright"
    cutting = Path(casewright.__file__).parent / "cutting"
    for name in ("__init__.py", "cutting/__init__.py", "cutting/compiled.py", "cutting/lengths/__init__.py"):
        (package / name).parent.mkdir(parents=True, exist_ok=True)
        source = cutting.parent / name
        if source.exists():
            shutil.copy(source, package / name)
    (package / "cutting/lengths/calls.py").write_text(CALLS)
    answers = []
    for number in (1, 22):
        (package / "cutting/lengths/called.py").write_text(CALLED.format(number))
        done = subprocess.run(
            [sys.executable, "-m", "casewright.cutting.lengths.calls"],
            cwd=tmp_path,
            env={"PYTHONPATH": str(tmp_path), "NUMBA_CACHE_DIR": str(tmp_path / "kept")},
            capture_output=True,
            text=True,
            check=True,
        )
        answers.append(done.stdout.strip())
    assert answers == ["1", "22"]
