"""The command line: a unit file in; its parts, joints, lumber order, hours and price out.

Exit status: 0 all is well, 1 a check says stop, 2 the input cannot be used, 3 a fault of this program.
"""

import argparse
import os
import sys
from collections.abc import Callable, Sequence
from datetime import date, datetime
from functools import partial
from pathlib import Path
from typing import Any, NoReturn, TypeVar

from casewright import __version__
from casewright.cutting_command import add_cut_command
from casewright.joinery.chisels import RACK
from casewright.joinery.joint import Field, Measure
from casewright.joinery.kinds import kinds, solve
from casewright.joinery.sizes import slope_typed
from casewright.measure.findings import Finding, Verdict, worst
from casewright.measure.lengths import LengthUnit, parse_length
from casewright.measure.saying import in_unit, refusal
from casewright.measure.typed import quoted
from casewright.measure.working import NoSuchFigure
from casewright.papers.data import estimate_data, unit_data, working_data
from casewright.papers.estimate_report import estimate_report, unit_report
from casewright.papers.joint_report import joint_data, joint_report
from casewright.papers.why import figures_behind, figures_section, why
from casewright.papers.writing import Writing
from casewright.pieces.asked.reading import CannotRead, parse_json, read_as, read_unit, unit_schema
from casewright.pieces.asked.shop import Shop, example_shop, shop
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.asked_for import with_asked
from casewright.pieces.built.construct import Construction, construct
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.costs.estimate import estimate
from casewright.service_commands import add_service_commands
from casewright.terminal import (
    FINE,
    Unusable,
    package_text,
    read_text,
    show,
    show_json,
    write_files,
    writing_of,
)

Worked = TypeVar("Worked")
STOPPED, UNUSABLE, FAULT = 1, 2, 3
NAMES = "@names"
"""What --why means when it is given without a name: list them."""


class Parser(argparse.ArgumentParser):
    """A parser whose complaint is one sentence."""

    def error(self, message: str) -> NoReturn:
        raise Unusable(f"{message}; see {self.prog} --help")


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one command.

    Args:
        arguments: what was typed behind the program's name; the process's own when left out

    Returns:
        The exit status.
    """
    try:
        given = parser().parse_args(arguments)
        status: int = given.run(given)
        sys.stdout.flush()
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return FINE
    except KeyboardInterrupt:
        return complain("stopped", FAULT)
    except Exception as error:
        return refuse(error)
    return status


def refuse(error: Exception) -> int:
    """Says in a sentence why nothing came out; never shows a trace unless it was asked for."""
    if isinstance(error, CannotRead):
        return complain("\n".join(str(problem) for problem in error.problems[:5]), UNUSABLE)
    if isinstance(error, (Unusable, NoSuchFigure, *REFUSALS)) or _is_of_the_service(error):
        return complain(str(error.args[0]), UNUSABLE)
    if os.environ.get("CASEWRIGHT_TRACE"):
        raise error
    what = f"{type(error).__name__}, casewright {__version__}"
    return complain(
        f"this is a fault of the program, not of your file ({what}); CASEWRIGHT_TRACE=1 shows where", FAULT
    )


def _is_of_the_service(error: Exception) -> bool:
    """Whether an error is a sentence of the service: asked by name, so that it need not be loaded."""
    return type(error).__name__ in {"BadSetting", "NewerDatabase", "Refused", "NotFound", "BadArchive"}


def complain(sentence: str, status: int) -> int:
    """Says what is wrong, where messages go, and hands the status on."""
    sys.stderr.write(f"casewright: {sentence}\n")
    return status


def parser() -> Parser:
    """The commands and their options."""
    top = Parser(prog="casewright", description="Job costing, joinery, cut lists and lumber orders.")
    top.add_argument("--version", action="version", version=f"casewright {__version__}")
    top.add_argument("--schema", action="store_true", help="print the JSON Schema of the unit file and stop")
    top.set_defaults(run=run_bare)
    commands = top.add_subparsers(title="commands", metavar="COMMAND", parser_class=Parser)
    unit_command(
        commands,
        "estimate",
        "openings, cut list, joints, checks, lumber order, hours and price",
        run_estimate,
    )
    unit_command(commands, "unit", "as estimate, but stops after the construction", run_unit)
    joint_command(commands)
    add_cut_command(commands, run_cut, output_options)
    example = commands.add_parser("example", help="print the example unit file, to be edited")
    example.set_defaults(run=lambda given: show(package_text("example_unit.json")))
    figures = commands.add_parser("shop", help="print a shop file to be edited, or its schema")
    figures.add_argument("--schema", action="store_true", help="print the JSON Schema of the shop file")
    figures.set_defaults(run=run_shop)
    add_service_commands(commands, run_service)
    return top


def unit_command(commands: Any, name: str, words: str, run: Callable[[argparse.Namespace], int]) -> None:
    """Adds a command that reads a unit file."""
    command = commands.add_parser(name, help=words, description=f"{name}: {words}.")
    command.add_argument("file", nargs="?", help="a unit file; - reads the input; left out, an example")
    command.add_argument("--shop", metavar="FILE", help="the shop's own figures; left out, an example shop's")
    command.add_argument(
        "--why", nargs="?", const=NAMES, metavar="LINE", help="show the working of a line or figure"
    )
    command.add_argument("--svg", metavar="DIR", help="also write the drawings into this folder")
    command.add_argument("--files", metavar="DIR", help="also write its templates and caution sheet there")
    command.add_argument(
        "--schema", action="store_true", help="print the JSON Schema of the unit file and stop"
    )
    if name == "estimate":
        command.add_argument(
            "--start", metavar="DATE", help="count the promise from this day, such as 2027-03-01"
        )
    output_options(command)
    command.set_defaults(run=run)


def output_options(command: argparse.ArgumentParser) -> None:
    """Adds the options that say how an answer is printed."""
    command.add_argument("--json", action="store_true", help="print the answer for machines")
    command.add_argument("--checks", action="store_true", help="list the checks that pass, too")
    command.add_argument(
        "--in", dest="unit", action="store_const", const=LengthUnit.INCH, help="print inches"
    )
    command.add_argument(
        "--mm", dest="unit", action="store_const", const=LengthUnit.MILLIMETRE, help="print mm"
    )
    command.add_argument(
        "--fraction", type=int, choices=(16, 32, 64), default=64, help="finest fraction printed"
    )


def joint_command(commands: Any) -> None:
    """Adds a command for each kind of joint, its options from the joint's own fields."""
    joint = commands.add_parser("joint", help="the settings of one joint")
    families = joint.add_subparsers(title="kinds", metavar="KIND", required=True, parser_class=Parser)
    for kind in kinds().values():
        family = families.add_parser(kind.name, help=kind.title, description=kind.title)
        for field in kind.fields:
            left_out = "needed" if field.required else f"left out: {field.default}"
            words = f"{field.help} For example {field.example}; {left_out}.".replace("%", "%%")
            family.add_argument(field.option, dest=field.name, metavar=field.measure.upper(), help=words)
        family.add_argument("--files", metavar="DIR", help="also write drawing and template into this folder")
        family.add_argument("--shop", metavar="FILE", help="the shop's own rack; left out, a usual one")
        output_options(family)
        family.set_defaults(run=run_joint, kind=kind.name)


def run_bare(given: argparse.Namespace) -> int:
    """`casewright` alone starts the service."""
    return show_json(unit_schema()) if given.schema else run_service("serve", given)


def run_service(name: str, given: argparse.Namespace) -> int:
    """One of the service's commands; its parts are loaded only for those who ask."""
    from casewright import commands  # noqa: PLC0415 - half a second that the other commands need not wait

    return commands.run(name, given)


def run_estimate(given: argparse.Namespace) -> int:
    """`casewright estimate`."""
    if given.schema:
        return show_json(unit_schema())
    spec, figures, start = read_spec(given.file), read_shop(given.shop), read_day(given.start)
    writing = writing_of(given, spec.unit, figures.spec.symbol)
    held = or_refused(lambda: estimate(spec, figures, start), writing.unit)

    def report() -> str:
        name = figures.spec.name or "the shop file"
        return estimate_report(held, writing, checks=given.checks, shop_name=name)

    return answer(given, held.unit, held.findings, writing, report, lambda: estimate_data(held))


def run_unit(given: argparse.Namespace) -> int:
    """`casewright unit`."""
    if given.schema:
        return show_json(unit_schema())
    spec, figures = read_spec(given.file), read_shop(given.shop)
    writing = writing_of(given, spec.unit, figures.spec.symbol)
    unit = or_refused(lambda: construct(spec, figures), writing.unit)
    report = partial(unit_report, unit, writing, checks=given.checks)
    return answer(given, unit, unit.findings, writing, report, lambda: unit_data(unit))


def or_refused(work: Callable[[], Worked], unit: LengthUnit) -> Worked:
    """What is worked out; a refusal speaks in the unit of the answer."""
    try:
        return work()
    except REFUSALS as error:
        raise Unusable(refusal(error, unit)) from None


def answer(
    given: argparse.Namespace,
    unit: Construction,
    findings: Sequence[Finding],
    writing: Writing,
    report: Callable[[], str],
    data: Callable[[], dict[str, Any]],
) -> int:
    """Prints what was asked for, writes its files, and says by its status whether a check stops."""
    if given.svg:
        write_drawings(Path(given.svg), unit, writing)
    if given.files:
        from casewright.papers.unit_files import unit_files  # noqa: PLC0415 - only for those who ask

        write_files(Path(given.files), unit_files(unit, writing.unit), "--files")
    if given.why == NAMES:
        show(figures_section(unit.ledger))
    elif given.why and given.json:
        unit = with_asked(unit, given.why)
        show_json(working_data(unit.ledger, figures_behind(unit, given.why)))
    elif given.why:
        show(why(unit, given.why, writing))
    elif given.json:
        show_json(data())
    else:
        show(report())
    return status_of(findings)


def run_joint(given: argparse.Namespace) -> int:
    """`casewright joint KIND`."""
    kind = kinds()[given.kind]
    unit = given.unit or LengthUnit.INCH
    values = {field.name: read_number(field, getattr(given, field.name), unit) for field in kind.fields}
    try:
        solved = solve(kind.name, values, rack=RACK if given.shop is None else read_shop(given.shop).rack)
    except ValueError as error:
        raise Unusable(refusal(error, unit)) from None
    if given.files:
        from casewright.papers.joint_files import joint_files  # noqa: PLC0415 - only for those who ask

        write_files(Path(given.files), joint_files(kind, solved, unit), "--files")
    if given.json:
        show_json(joint_data(kind.name, solved))
    else:
        show(joint_report(kind, solved, writing_of(given, unit, "$"), checks=given.checks))
    return status_of(solved.findings)


def run_cut(given: argparse.Namespace) -> int:
    """`casewright cut`; numba and the solver are loaded only for those who ask."""
    from casewright import cutting_run  # noqa: PLC0415 - a second that the other commands need not wait

    return cutting_run.run(given)


def run_shop(given: argparse.Namespace) -> int:
    """`casewright shop`."""
    if given.schema:
        schema = ShopSpec.model_json_schema()
        return show_json({"$schema": "https://json-schema.org/draft/2020-12/schema", **schema})
    return show(package_text("example_shop.json"))


def read_number(field: Field, typed: str | None, unit: LengthUnit) -> float | None:
    """One number of a joint from what was typed; None where nothing was."""
    if typed is None:
        return None
    try:
        if field.measure.is_length:
            return float(parse_length(typed, unit))
        if field.measure is Measure.SLOPE:
            return slope_typed(typed)
        if field.measure is Measure.ANSWER:
            return {"no": 0.0, "yes": 1.0}[typed]
        number = float(int(typed)) if field.measure is Measure.COUNT else float(typed)
        if not abs(number) < LARGEST:
            raise ValueError(typed)
    except (ValueError, KeyError, ArithmeticError) as error:
        reason = f"{quoted(typed)} will not do; give {in_unit(field.wanted, unit)}."
        if field.measure.is_length:
            reason = f"{error} For example {field.option} {in_unit(field.typed_example, unit)}."
        raise Unusable(f"{field.option}: {reason}") from None
    return number


def read_spec(name: str | None) -> UnitSpec:
    """The unit that a file holds; the example without a file."""
    return read_unit(package_text("example_unit.json") if name is None else read_text(name))


def read_shop(name: str | None) -> Shop:
    """The shop that a file holds; the example without a file."""
    return example_shop() if name is None else shop(read_as(ShopSpec, parse_json(read_text(name))))


def read_day(typed: str | None) -> date:
    """The day from which the promise counts: today where none is given."""
    if typed is None:
        return datetime.now().astimezone().date()
    try:
        day = date.fromisoformat(typed)
    except ValueError:
        raise Unusable(f"--start: {quoted(typed)} is not a day; write it as 2027-03-01") from None
    if not 1900 <= day.year <= 2200:
        raise Unusable(f"--start: {day} is not a day of our time; write one such as 2027-03-01")
    return day


LARGEST = 1000
"""No count, slope, percentage or gravity of a joint comes near it."""


def write_drawings(folder: Path, unit: Construction, writing: Writing) -> None:
    """Writes every drawing of a unit into a folder, which is made if need be."""
    from casewright.drawing.drawings import unit_drawings  # noqa: PLC0415 - only for those who ask

    drawn = {name: text.encode() for name, text in unit_drawings(unit).items()}
    write_files(folder, drawn, "--svg")


def status_of(findings: Sequence[Finding]) -> int:
    """One when a check says stop."""
    return STOPPED if worst(findings) is Verdict.STOP else FINE
