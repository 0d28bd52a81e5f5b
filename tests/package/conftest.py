"""The wheel and an environment with it, made once, by the recipe of the container."""

import sys
from pathlib import Path

import pytest
from building import RECIPE, carry_out, stages


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """The folder in which the recipe's first stage worked, and the environment that it made."""
    build, environment = tmp_path_factory.mktemp("build"), tmp_path_factory.mktemp("empty") / "venv"
    carry_out(stages(RECIPE.read_text())[0], build, environment, sys.executable)
    return build, environment


@pytest.fixture(scope="session")
def installed(built: tuple[Path, Path]) -> Path:
    """The programs of a new environment that holds the wheel and the locked packages, nothing else."""
    return built[1] / "bin"


@pytest.fixture(scope="session")
def wheel(built: tuple[Path, Path]) -> Path:
    """The wheel that was installed there."""
    return next(built[0].glob("dist/casewright-*.whl"))
