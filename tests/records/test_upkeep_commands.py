"""The commands that look after the service, as a person or a script gives them."""

import io
import json
import shutil
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest
from filling import MOMENT
from sqlalchemy import select, text

from casewright.cli import main
from casewright.records.engine import newest_revision, open_engine, present_revision
from casewright.records.people import House, Person, ShopFigures, SignIn
from casewright.records.sessions import across_shops
from casewright.shop.entering import keep_signed_in, new_set_up_code
from casewright.shop.last_backup import last_backup
from casewright.shop.passwords import matches
from casewright.upkeep.forms import bring_to

PASSWORD = "grain of old walnut"  # noqa: S105 - of nobody who exists
ADA = "ada@shop.example"
NEW_SHOP = ("create-user", ADA, "--name", "Ada Marsh", "--new-shop", "Marrow Street")
ALL = (
    *("backup", "verify-backup", "restore", "export", "doctor", "migrate"),
    *("create-user", "reset-password", "end-sessions", "list-users"),
)


@dataclass
class Said:
    """What a command answered."""

    status: int
    out: str
    err: str

    @property
    def data(self) -> dict[str, object]:
        """What it said to machines."""
        read: dict[str, object] = json.loads(self.out)
        return read


Run = Callable[..., Said]


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Run:
    """Gives a command over a data folder; `typed` is what comes in on the input, which is no terminal."""

    def give(*parts: str, typed: str = "", data: Path | None = None) -> Said:
        monkeypatch.setattr(sys, "stdin", io.StringIO(typed))
        status = main([*parts, "--data", str(data or tmp_path / "shop")])
        said = capsys.readouterr()
        return Said(status, said.out, said.err)

    return give


@pytest.fixture(scope="module")
def made_once(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The data folder of a shop that a script made."""
    folder = tmp_path_factory.mktemp("made") / "shop"
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(sys, "stdin", io.StringIO(f"{PASSWORD}\n"))
        assert main([*NEW_SHOP, "--password-stdin", "--data", str(folder)]) == 0
    return folder


@pytest.fixture
def shop(made_once: Path, tmp_path: Path) -> Path:
    """A copy of it: to migrate each anew takes longer than most of what is tried."""
    return shutil.copytree(made_once, tmp_path / "shop")


def person(data: Path, email: str = ADA) -> Person:
    engine = open_engine(f"sqlite:///{data / 'casewright.db'}")
    with across_shops(engine) as db:
        found = db.scalars(select(Person).where(Person.email == email)).one()
    engine.dispose()
    return found


def tax_kept(data: Path, shop_id: str) -> float:
    engine = open_engine(f"sqlite:///{data / 'casewright.db'}")
    with across_shops(engine) as db:
        spec = db.scalars(select(ShopFigures).where(ShopFigures.shop_id == shop_id)).one().spec
    engine.dispose()
    return float(spec["tax_rate"])


@pytest.mark.parametrize("name", ALL)
def test_every_command_has_help_with_an_example(name: str, capsys: pytest.CaptureFixture[str]):
    with pytest.raises(SystemExit) as ended:
        main([name, "--help"])

    assert ended.value.code == 0
    assert f"For example: casewright {name}" in " ".join(capsys.readouterr().out.split())


def test_a_shop_can_be_made_without_a_page(shop: Path, run: Run):
    assert matches(PASSWORD, person(shop).password_hash)
    assert "owner" in run("list-users").out


def test_the_set_up_page_stays_shut_after_it(shop: Path):
    engine = open_engine(f"sqlite:///{shop / 'casewright.db'}")
    with across_shops(engine, write=True) as db:
        assert db.get_one(House, 1).set_up_at is not None
        assert new_set_up_code(db) is None
    engine.dispose()


def test_a_second_shop_and_more_people_can_be_added(shop: Path, run: Run):
    other = ("create-user", "eva@other.example", "--new-shop", "Other", "--currency", "EUR", "--tax", "20")
    assert run(*other, "--password-stdin", typed=PASSWORD).status == 0

    unclear = run("create-user", "ben@shop.example", "--password-stdin", typed=PASSWORD)
    clear = run(
        "create-user",
        "ben@shop.example",
        "--shop",
        "Marrow Street",
        "--role",
        "bench",
        "--password-stdin",
        typed=PASSWORD,
    )

    assert (unclear.status, clear.status) == (2, 0)
    assert "Marrow Street" in unclear.err
    assert person(shop, "ben@shop.example").role == "bench"


@pytest.mark.parametrize(("typed", "share"), [("6.85", 0.0685), ("8.1875", 0.081875), ("20", 0.2), ("0", 0)])
def test_a_tax_is_kept_as_the_decimal_that_was_typed(shop: Path, run: Run, typed: str, share: float):
    other = ("create-user", "eva@other.example", "--new-shop", "Other", "--tax", typed, "--password-stdin")
    assert run(*other, typed=PASSWORD).status == 0

    assert tax_kept(shop, person(shop, "eva@other.example").shop_id) == share


@pytest.mark.parametrize(
    ("parts", "typed", "why"),
    [
        (("create-user", "ben@shop.example"), PASSWORD, "--password-stdin"),
        (("create-user", "ben", "--password-stdin"), PASSWORD, "no e-mail address"),
        (("create-user", "ben@shop.example", "--password-stdin"), "short", "12 or more"),
        (("create-user", "ben@shop.example", "--password-stdin"), "", "12 or more"),
        (("create-user", "ben@shop.example", "--password-stdin"), "marrow street 12", "stranger would try"),
        (("create-user", ADA, "--password-stdin"), PASSWORD, "already"),
        (
            ("create-user", "b@c.example", "--new-shop", "Marrow Street", "--password-stdin"),
            PASSWORD,
            "already",
        ),
        (
            ("create-user", "b@c.example", "--new-shop", "X", "--role", "bench", "--password-stdin"),
            PASSWORD,
            "owner",
        ),
        (
            ("create-user", "b@c.example", "--new-shop", "X", "--tax", "-1", "--password-stdin"),
            PASSWORD,
            "--tax",
        ),
        (
            ("create-user", "b@c.example", "--new-shop", "X", "--tax", "nan", "--password-stdin"),
            PASSWORD,
            "--tax",
        ),
        (
            ("create-user", "b@c.example", "--new-shop", "X", "--currency", "QQQ", "--password-stdin"),
            PASSWORD,
            "USD",
        ),
        (
            ("create-user", "b@c.example", "--new-shop", "X", "--currency", "JPY", "--password-stdin"),
            PASSWORD,
            "USD",
        ),
        (
            ("create-user", "b@c.example", "--new-shop", "X", "--time-zone", "Here", "--password-stdin"),
            PASSWORD,
            "Europe",
        ),
        (("create-user", "b@c.example", "--new-shop", " ", "--password-stdin"), PASSWORD, "--new-shop"),
        (("reset-password", "nobody@shop.example", "--password-stdin"), PASSWORD, "Nobody has"),
        (("reset-password", ADA), PASSWORD, "--password-stdin"),
        (("end-sessions", "nobody@shop.example"), "", "Nobody has"),
        (("list-users", "--shop", "No such"), "", "Marrow Street"),
        (("export", "x.zip", "--shop", "No such"), "", "Marrow Street"),
        (("backup", "no/such/folder/x.zip"), "", "cannot be used"),
        (("restore", "no-such.zip"), "", "cannot be used"),
        (("verify-backup", "no-such.zip"), "", "cannot be used"),
    ],
)
def test_what_cannot_be_done_is_said_in_a_sentence(
    shop: Path, run: Run, parts: tuple[str, ...], typed: str, why: str
):
    said = run(*parts, typed=typed)

    assert said.status == 2
    assert why in said.err
    assert said.out == ""
    assert PASSWORD not in said.err


@pytest.mark.parametrize("name", ["backup x.zip", "export x.zip", "list-users", f"end-sessions {ADA}"])
def test_a_data_folder_without_data_is_named_and_not_made(run: Run, tmp_path: Path, name: str):
    said = run(*name.split(), data=tmp_path / "nowhere")

    assert said.status == 2
    assert "no database" in said.err
    assert not (tmp_path / "nowhere").exists()


def test_a_new_password_ends_every_sign_in_and_is_never_shown(shop: Path, run: Run):
    engine = open_engine(f"sqlite:///{shop / 'casewright.db'}")
    with across_shops(engine, write=True) as db:
        keep_signed_in(db, db.scalars(select(Person)).one(), MOMENT, device="", address="")

    said = run("reset-password", ADA, "--password-stdin", typed="three words of birch\r\n")

    with across_shops(engine) as db:
        signed_in = db.scalars(select(SignIn)).all()
    engine.dispose()
    assert said.status == 0
    assert "birch" not in said.out + said.err
    assert matches("three words of birch", person(shop).password_hash)
    assert signed_in == []


def test_somebody_can_be_signed_out_everywhere(shop: Path, run: Run):
    engine = open_engine(f"sqlite:///{shop / 'casewright.db'}")
    with across_shops(engine, write=True) as db:
        keep_signed_in(db, db.scalars(select(Person)).one(), MOMENT, device="", address="")
    engine.dispose()

    assert run("end-sessions", ADA, "--json").data["ended"] == 1
    assert run("list-users", "--json").data["people"][0]["sign_ins"] == 0  # type: ignore[index]


def test_a_backup_goes_round(shop: Path, run: Run, tmp_path: Path):
    file = str(tmp_path / "all.zip")

    assert run("backup", file, "--json").data["rows"]["person"] == 1  # type: ignore[index]
    assert run("backup", file).status == 2
    assert run("backup", file, "--force").status == 0
    assert run("verify-backup", file).status == 0
    assert run("restore", file, data=tmp_path / "second").status == 0
    assert person(tmp_path / "second").name == "Ada Marsh"
    assert run("restore", file, data=tmp_path / "second").status == 2
    kept = run("restore", file, "--force", "--json", data=tmp_path / "second").data["kept"]
    assert run("verify-backup", str(kept)).status == 0


def test_a_damaged_backup_is_not_good_and_cannot_be_restored(shop: Path, run: Run, tmp_path: Path):
    file = tmp_path / "all.zip"
    run("backup", str(file))
    file.write_bytes(file.read_bytes()[:-10])

    verified = run("verify-backup", str(file), "--json")
    restored = run("restore", str(file), data=tmp_path / "second")

    assert (verified.status, restored.status) == (1, 2)
    assert verified.data["good"] is False
    assert "cut short" in restored.err
    assert not (tmp_path / "second").exists()


def test_the_doctor_knows_where_the_last_backup_was_put(shop: Path, run: Run, tmp_path: Path):
    before = run("doctor")
    run("backup", str(tmp_path / "shop.zip"))

    after = run("doctor")

    assert "None is known of." in before.out
    assert str(tmp_path / "shop.zip") in after.out


def test_a_trial_of_the_last_backup_is_remembered_with_what_it_found(shop: Path, run: Run, tmp_path: Path):
    file, copy, other = (tmp_path / name for name in ("shop.zip", "copy.zip", "other.zip"))
    run("backup", str(file))
    copy.write_bytes(file.read_bytes())
    other.write_bytes(b"no backup")
    held = [last_backup(shop)]
    for each in (other, copy):
        run("verify-backup", str(each))
        held.append(last_backup(shop))
    file.write_bytes(b"PK")
    run("verify-backup", str(file))
    held.append(last_backup(shop))
    file.unlink()

    assert [each and (each.tried_at is not None, each.is_good) for each in held] == [
        (False, True),
        (False, True),
        (True, True),
        (True, False),
    ]
    assert "found not to be good" in run("doctor").out


def test_the_doctor_answers_people_machines_and_scripts(shop: Path, run: Run):
    shop.chmod(0o755)
    ill = run("doctor")
    shop.chmod(0o700)
    well = run("doctor", "--json")

    assert ill.status == 1
    assert f"chmod 700 {shop}" in ill.out
    assert (well.status, well.data["well"]) == (0, True)


def test_an_older_database_is_brought_forward_after_a_backup(run: Run, tmp_path: Path):
    data = tmp_path / "old"
    data.mkdir()
    engine = open_engine(f"sqlite:///{data / 'casewright.db'}")
    bring_to(engine, "0001")

    refused = run("list-users", data=data)
    kept = run("migrate", "--json", data=data).data["kept"]

    assert refused.status == 2
    assert "`./run migrate`" in refused.err
    assert present_revision(engine) == newest_revision()
    assert run("verify-backup", str(kept)).status == 0
    assert run("migrate", "--json", data=data).data["kept"] is None
    engine.dispose()


def test_a_newer_database_is_left_alone_by_every_command(shop: Path, run: Run, tmp_path: Path):
    engine = open_engine(f"sqlite:///{shop / 'casewright.db'}")
    with engine.begin() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    engine.dispose()
    before = (shop / "casewright.db").read_bytes()

    statuses = [
        run(*parts.split(), typed=PASSWORD).status
        for parts in (
            "list-users",
            f"backup {tmp_path}/x.zip",
            "migrate",
            f"reset-password {ADA} --password-stdin",
        )
    ]

    assert statuses == [2, 2, 2, 2]
    assert run("doctor").status == 1
    assert (shop / "casewright.db").read_bytes() == before


def test_names_with_signs_that_command_a_terminal_are_shown_without_them(shop: Path, run: Run):
    engine = open_engine(f"sqlite:///{shop / 'casewright.db'}")
    with engine.begin() as connection:
        connection.execute(text("UPDATE person SET name = 'Ada' || char(27) || '[31m'"))
    engine.dispose()

    assert "\x1b" not in run("list-users").out
