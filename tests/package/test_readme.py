"""The README's own commands, as somebody types them who has nothing but the README."""

import io
import os
import re
import shlex
from pathlib import Path

import pytest

from casewright.cli import main
from serving import from_checkout

ROOT = Path(__file__).resolve().parents[2]
PASSWORD = "four words of one own"  # noqa: S105 - of people who do not exist
ASKS = {"create-user", "reset-password"}
"""Commands that ask for a password."""


def section(heading: str) -> list[str]:
    """The commands of a section, without what is said beside them."""
    text = (
        (ROOT / "README.md").read_text(encoding="utf-8").partition(f"## {heading}")[2].partition("\n## ")[0]
    )
    return [line.partition("#")[0].strip() for line in text.splitlines() if line.startswith("    ./run")]


@pytest.fixture
def terminal(tmp_path, monkeypatch, capsys):
    """An empty folder, and a way to type commands there; passwords come from the input."""
    monkeypatch.chdir(tmp_path)
    for name in [each for each in os.environ if each.startswith("CASEWRIGHT_")]:
        monkeypatch.delenv(name)
    monkeypatch.setenv("CASEWRIGHT_DATA", str(tmp_path / "data"))

    def run(line: str) -> str:
        words = shlex.split(line.removeprefix("./run"))
        if words[0] in ASKS:
            words.append("--password-stdin")
        monkeypatch.setattr("sys.stdin", io.StringIO(f"{PASSWORD}\n"))
        status = main(words)
        printed = capsys.readouterr()
        assert status == 0, (line, printed.out, printed.err)
        return printed.out

    return run


def test_the_commands_that_look_after_it_work_one_after_another(terminal):
    lines = section("Looking after it")

    terminal("./run create-user ada@shop.example --name 'Ada Marsh' --new-shop 'Marrow Street'")
    for line in lines:
        terminal(line)

    assert len(lines) >= 8
    assert Path("shop-monday.zip").stat().st_size > 1000
    assert Path("new-home/casewright.db").exists()


def test_run_alone_starts_the_service_and_says_what_comes_next_in_six_lines(tmp_path):
    assert section("Start") == ["./run"]

    with from_checkout(tmp_path) as served:
        said = [line for line in served.said if not line.startswith("{")]

        assert 2 <= len(said) <= 6
        assert served.printed(r"Casewright is at\s+(http\S+)")
        assert re.search(re.escape(str(tmp_path)), "\n".join(said))
        assert re.fullmatch(r"[a-z0-9-]{19}", served.printed(r"type the code\s+(\S+)"))
