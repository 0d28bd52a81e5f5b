"""Builds what a shop installs by the steps of docker/Dockerfile: they are carried out in other folders."""

import os
import shutil
import subprocess
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
RECIPE = ROOT / "docker" / "Dockerfile"
ENVIRONMENT = "/opt/casewright"  # where the recipe installs
UV = Path(  # where ./check puts it
    os.environ.get("CASEWRIGHT_UV") or shutil.which("uv") or ROOT / ".tools" / "uv" / "bin" / "uv"
)
CLEAN = {name: value for name, value in os.environ.items() if not name.startswith(("PYTHON", "CASEWRIGHT_"))}


@dataclass(frozen=True, slots=True)
class Step:
    """One instruction of a recipe."""

    word: str
    rest: str


def stages(text: str) -> list[list[Step]]:
    """The instructions of a recipe, for each FROM a list that begins with it."""
    lines = [line for line in text.splitlines() if line.strip() and not line.startswith("#")]
    whole = "\n".join(lines).replace("\\\n", " ").splitlines()
    steps = [Step(word, rest.strip()) for word, _, rest in (line.partition(" ") for line in whole)]
    starts = [place for place, step in enumerate(steps) if step.word == "FROM"]
    return [steps[start:end] for start, end in zip(starts, [*starts[1:], None], strict=True)]


def run(*command: object, cwd: Path = ROOT, env: dict[str, str] = CLEAN) -> str:
    """What the command prints; one that fails shows why."""
    parts = [str(part) for part in command]
    done = subprocess.run(parts, cwd=cwd, env=env, capture_output=True, text=True, check=False)
    assert done.returncode == 0, f"{parts}\n{done.stdout}\n{done.stderr}"
    return done.stdout


def carry_out(steps: list[Step], build: Path, environment: Path, python: str) -> None:
    """Copies and runs what a stage says, in `build` instead of its folder; uv itself is there already."""
    variables = CLEAN | {"PATH": f"{UV.parent}{os.pathsep}{os.environ['PATH']}", "UV_PYTHON": python}
    for step in steps:
        if step.word == "COPY":
            copy(step.rest.split(), build)
        elif step.word == "RUN" and not step.rest.startswith("pip install"):
            run("sh", "-euc", step.rest.replace(ENVIRONMENT, str(environment)), cwd=build, env=variables)


def copy(names: list[str], build: Path) -> None:
    """What COPY does: files into a folder, or a folder's content into another."""
    *sources, target = names
    for source in sources:
        if (ROOT / source).is_dir():
            shutil.copytree(ROOT / source, build / target, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copy(ROOT / source, build / target)
