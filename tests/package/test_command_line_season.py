"""The year on the command line: a short section of the report, its working, all of it for machines."""

import json
import re

import pytest

from casewright.cli import main
from units import dresser


@pytest.fixture
def file(tmp_path):
    """Worked dresser A as a file, with a few fields changed; its path."""

    def save(**season):
        path = tmp_path / "dresser.json"
        changes = {f"season.{name}": value for name, value in season.items()}
        path.write_text(json.dumps(dresser(changes)), encoding="utf-8")
        return str(path)

    return save


def season_of(printed):
    """The section of the season, its lines put together."""
    return " ".join(printed.partition("SEASON")[2].partition("CHECKS")[0].split())


@pytest.mark.parametrize("command", ["unit", "estimate"])
def test_the_report_has_a_short_section_of_the_season(command, file, capsys):
    main([command, file(fitted="July")])

    section = season_of(capsys.readouterr().out)
    # worked dresser A: planed to 8-13/32, 3/32 now, 0.033 at the sides when wettest
    assert "A-R5-1 8-13/32 3/32 0.033 July 0.150 January" in section
    assert "reach under the back 0.500 0.379 0.631 0.000 pass" in section
    assert "Jan 6.2, Feb 6.5," in section
    assert "Fitted in July at 8.5 %: 2.5 % drier than the home in that month (11.0 %)" in section
    assert "Wood follows the air with a lag" in section


def test_a_report_in_millimetres_has_no_inches(file, capsys):
    main(["unit", file(), "--mm"])

    section = season_of(capsys.readouterr().out)
    assert "213.5" in section
    assert not re.search(r"\d in\b", section)
    assert "5/32" not in section


@pytest.mark.parametrize("command", ["unit", "estimate"])
def test_machines_get_every_month(command, file, capsys):
    main([command, file(fitted="October"), "--json"])

    season = json.loads(capsys.readouterr().out)["season"]
    assert (season["fitted"], season["driest_month"], season["wettest_month"]) == (
        "October",
        "January",
        "July",
    )
    assert len(season["months_percent"]) == 12
    lowest = season["drawers"][-1]
    assert lowest["drawers"] == ["A-R5-1"]
    assert len(lowest["gap_above_front"]["months_in"]) == 12
    # worked dresser A prints 0.033 and 0.042
    assert lowest["least"]["gap_in"] == pytest.approx(0.033, abs=0.0005)
    assert lowest["gap_above_front"]["wettest_in"] == pytest.approx(0.042, abs=0.0005)
    assert [each["month"] for each in lowest["fitted_in"]][6] == "July"
    assert all(each["passes"] for each in season["parts"])
    assert {each["cut"] for each in season["cuts"]} == {"flat", "rift", "quarter"}


def test_a_figure_of_the_year_shows_its_working(file, capsys):
    status = main(["unit", file(), "--why", "year.R5-1.front_july"])

    printed = capsys.readouterr().out
    assert status == 0
    assert "change = 2.5%  from year.change.july" in printed
    assert "last = 11%  from moisture.july" in printed
    main(["unit", file(), "--why", "moisture.april", "--json"])
    assert json.loads(capsys.readouterr().out)[0]["value"] == "8.6%"


def test_a_wrong_month_is_refused_by_its_field(file, capsys):
    assert main(["unit", file(fitted="Julember")]) == 2
    assert "season.fitted: “Julember” is not a month; write its name, such as July" in capsys.readouterr().err
