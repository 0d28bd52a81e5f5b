"""The doctor tells how old the last backup is, and whether it is good."""

from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest
from in_order import NOW, back_up, in_order

from casewright.settings import Settings
from casewright.upkeep.doctor import look_over
from casewright.upkeep.looks import Health, Look


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    """A place in good order, on SQLite."""
    return in_order(tmp_path)


def test_the_doctor_tells_where_the_last_backup_is(settings: Settings, tmp_path: Path):
    (found,) = backups_seen(settings)

    assert found.health is Health.FINE
    assert str(tmp_path / "shop.zip") in found.found


def forget(settings: Settings) -> None:
    (settings.data / "last-backup.json").unlink()


def spoil_note(settings: Settings) -> None:
    (settings.data / "last-backup.json").write_text("{}")


def grow_old(settings: Settings) -> None:
    back_up(settings, settings.data.parent / "older.zip", NOW - timedelta(days=9))


def grow_older_than_two_nights(settings: Settings) -> None:
    back_up(settings, settings.data.parent / "older.zip", NOW - timedelta(hours=49))


def damage_backup(settings: Settings) -> None:
    path = settings.data.parent / "shop.zip"
    path.write_bytes(path.read_bytes()[:-1] + b"x")


@pytest.mark.parametrize(
    ("spoil", "health", "said"),
    [
        (forget, Health.LOOK, "None is known of."),
        (spoil_note, Health.LOOK, "None is known of."),
        (grow_old, Health.LOOK, "9 days ago, and 48 hours are the most"),
        (grow_older_than_two_nights, Health.LOOK, "49 hours ago, and 48 hours are the most"),
        (damage_backup, Health.WRONG, "its seal does not fit"),
    ],
)
def test_no_backup_that_could_be_relied_on_is_said(
    settings: Settings, spoil: Callable[[Settings], None], health: Health, said: str
):
    spoil(settings)

    (found,) = backups_seen(settings)

    assert found.health is health
    assert said in found.found
    assert "`./run backup FILE`" in found.todo


def test_a_backup_of_two_nights_ago_is_new_enough(settings: Settings, tmp_path: Path):
    back_up(settings, tmp_path / "older.zip", NOW - timedelta(hours=47))

    (found,) = backups_seen(settings)

    assert found.health is Health.FINE


def test_a_backup_that_was_carried_elsewhere_is_as_it_should_be(settings: Settings, tmp_path: Path):
    (tmp_path / "shop.zip").unlink()

    (found,) = backups_seen(settings)

    assert found.health is Health.FINE
    assert "where it is no more" in found.found


def backups_seen(settings: Settings) -> list[Look]:
    return [each for each in look_over(settings, NOW) if each.at == "last backup"]
