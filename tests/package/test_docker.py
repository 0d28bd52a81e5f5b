"""The container's recipe and the compose file, as far as they can be tried without an engine.

The recipe's building steps are carried out by the fixture `installed`.
"""

import json
import re
import shlex
import tomllib
from itertools import chain

import pytest
import yaml
from building import ENVIRONMENT, RECIPE, ROOT, Step, run, stages

from casewright.cli import parser
from casewright.settings import KNOWN

DOCKER = ROOT / "docker"
BUILD, FINAL = stages(RECIPE.read_text())
STEPS = [*BUILD, *FINAL]


def rests(word: str, steps: list[Step] = FINAL) -> list[str]:
    """What stands behind each such instruction."""
    return [step.rest for step in steps if step.word == word]


@pytest.fixture(scope="module")
def compose() -> dict:
    """The compose file."""
    return yaml.safe_load((DOCKER / "compose.yaml").read_text())


def example_variables() -> dict[str, str]:
    """The variables of the example .env."""
    lines = [line for line in (DOCKER / ".env.example").read_text().splitlines() if line[:1] not in ("", "#")]
    return dict(line.split("=", 1) for line in lines)


def test_the_recipe_s_steps_give_a_casewright_that_answers(installed, tmp_path):
    version = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["version"]

    said = run(installed / "casewright", "--version", cwd=tmp_path)

    assert version in said


def test_what_is_installed_is_what_the_image_takes_over():
    assert rests("COPY") == [f"--from=build {ENVIRONMENT} {ENVIRONMENT}"]
    assert rests("ENV")[0].startswith(f"PATH={ENVIRONMENT}/bin:")


def test_both_stages_start_from_one_python_of_a_stated_version():
    bases = {rest.split()[0] for rest in rests("FROM", STEPS)}

    assert len(bases) == 1
    assert re.fullmatch(r"python:3\.\d+-slim-[a-z]+", bases.pop())


def test_every_package_is_installed_by_its_hash_or_is_our_own():
    installs = [run for run in rests("RUN", STEPS) if re.search(r"\bpip (install|sync)\b|\buv build\b", run)]

    unsafe = [run for run in installs if "--require-hashes" not in run and "--offline --no-deps" not in run]

    assert len(installs) == 4
    assert unsafe == []


def test_nothing_is_fetched_from_an_address():
    assert rests("ADD", STEPS) == []
    assert not any("://" in step.rest for step in STEPS if step.word in ("RUN", "COPY"))


def test_it_runs_as_a_user_who_owns_the_data_and_nothing_else():
    made = " ".join(rests("RUN"))

    assert rests("USER") == ["10001:10001"]
    assert "useradd --uid 10001 --user-group" in made
    assert rests("VOLUME") == ["/data"]
    assert "--owner=casewright --group=casewright --mode=0700 /data" in made


def test_it_starts_without_a_shell_and_is_told_to_stop():
    (command,) = rests("CMD")

    assert json.loads(command) == ["casewright", "serve", "--host", "0.0.0.0", "--data", "/data"]  # noqa: S104
    assert rests("STOPSIGNAL") == ["SIGTERM"]
    assert rests("EXPOSE") == ["8000"]


def test_the_health_check_is_python_that_can_be_run():
    (check,) = rests("HEALTHCHECK")

    program, option, code = json.loads(check.partition("CMD ")[2])

    assert (program, option) == ("python", "-c")
    assert "/healthz" in code
    compile(code, "HEALTHCHECK", "exec")


def test_the_build_sees_all_that_it_copies_and_little_else():
    seen = {
        line[1:] for line in (DOCKER / "Dockerfile.dockerignore").read_text().splitlines() if line[:1] == "!"
    }

    copied = set(chain.from_iterable(rest.split()[:-1] for rest in rests("COPY", BUILD)))

    assert copied == seen


def test_compose_builds_this_recipe_and_hands_it_the_database(compose):
    service = compose["services"]["casewright"]

    assert (DOCKER / service["build"]["context"]).resolve() == ROOT
    assert ROOT / service["build"]["dockerfile"] == RECIPE
    assert service["environment"]["CASEWRIGHT_DATABASE_URL"].startswith("postgresql+psycopg://")
    assert service["env_file"] == ".env"


def test_compose_starts_the_service_when_its_database_answers(compose):
    needs = compose["services"]["casewright"]["depends_on"]

    assert needs == {"postgres": {"condition": "service_healthy"}}
    assert "pg_isready" in compose["services"]["postgres"]["healthcheck"]["test"]


@pytest.mark.parametrize("name", ["casewright", "postgres"])
def test_compose_gives_nobody_more_than_they_need(compose, name):
    service = compose["services"][name]

    assert service["read_only"] is True
    assert "/tmp" in service["tmpfs"]  # noqa: S108 - inside the container
    assert service["security_opt"] == ["no-new-privileges:true"]
    assert "privileged" not in service


def test_compose_keeps_books_and_data_in_volumes_of_their_own(compose):
    kept = [volume.split(":")[0] for each in compose["services"].values() for volume in each["volumes"]]

    assert sorted(kept) == sorted(compose["volumes"]) == ["books", "data"]


def test_the_database_is_of_a_stated_version_and_not_reachable_from_outside(compose):
    database = compose["services"]["postgres"]

    assert database["image"] == "postgres:18"
    assert "ports" not in database
    assert database["volumes"] == ["books:/var/lib/postgresql"]  # of 18 and later: the folder above the data


def test_no_password_is_handed_out_and_none_is_kept_by_mistake():
    variables = example_variables()

    assert variables["POSTGRES_PASSWORD"] == ""
    assert ".env" in (ROOT / ".gitignore").read_text().splitlines()


def test_compose_asks_for_no_variable_that_the_example_does_not_name():
    asked = set(re.findall(r"\$\{(\w+)", (DOCKER / "compose.yaml").read_text()))

    assert asked <= set(example_variables())


@pytest.mark.parametrize("file", ["Dockerfile", "compose.yaml", ".env.example", "README.md"])
def test_only_settings_that_there_are_are_spoken_of(file):
    named = set(re.findall(r"CASEWRIGHT_([A-Z_]+)", (DOCKER / file).read_text()))

    assert named <= set(KNOWN)


def test_the_readme_explains_every_setting():
    named = set(re.findall(r"CASEWRIGHT_([A-Z_]+)", (DOCKER / "README.md").read_text()))

    assert named >= set(KNOWN)


OWN = r"casewright (?=backup|verify-backup|restore|doctor|export|migrate|list-users)"


def own_commands() -> list[tuple[str, list[str]]]:
    """The service's own commands among those that the README tells people to type, with the whole line."""
    lines = [line for line in (DOCKER / "README.md").read_text().splitlines() if line.startswith("    ")]
    return [(line, shlex.split(re.split(OWN, line)[1])) for line in lines if re.search(OWN, line)]


def test_the_readme_keeps_the_books_by_the_service_s_own_commands():
    by_way = {
        way: {parts[0] for line, parts in own_commands() if line.strip().startswith(way)}
        for way in ("docker compose", "docker exec", "docker run")
    }

    assert by_way == {
        "docker compose": {"backup", "verify-backup", "restore"},
        "docker exec": {"backup", "verify-backup"},
        "docker run": {"restore"},
    }
    assert not re.search(r"pg_dump|pg_restore|VACUUM|books\.db", (DOCKER / "README.md").read_text())


@pytest.mark.parametrize(("line", "parts"), own_commands())
def test_every_command_of_the_readme_is_one_that_there_is_and_writes_where_it_may(line, parts):
    given = parser().parse_args(parts)

    assert given.file.startswith("/data/")
