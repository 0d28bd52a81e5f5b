"""What a person typed into a form: kept as it was, read once, every fault beside its field."""

import re
import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal, InvalidOperation

from starlette.datastructures import UploadFile
from starlette.exceptions import HTTPException
from starlette.requests import Request

from casewright.measure.lengths import LengthError, LengthUnit, parse_length
from casewright.measure.typed import quoted

MOST_FIELDS = 2_000
LONGEST_FIELD = 200_000
UNSEEN = re.compile(
    r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]"
)
"""Control signs and signs that turn the direction of writing: no form has a use for them."""
EMAIL = re.compile(r"[^@\s<>\"',;:]{1,64}@[^@\s<>\"',;:]{1,185}\.[^@\s<>\"',;:.]{2,63}")
GROUPED = re.compile(
    r"[+-]?[1-9][0-9]{0,2}((,[0-9]{3})+|( [0-9]{3})+|(\u00a0[0-9]{3})+|(\u202f[0-9]{3})+)(\.[0-9]*)?"
)
"""A number whose thousands are set apart, by commas or by spaces."""
WITH_COMMA = re.compile(r"[+-]?[0-9]*,[0-9]*")
"""A number that has one comma and no point."""
MONEY_LIMIT = Decimal("10000000")


@dataclass(frozen=True, slots=True)
class Typed:
    """The fields of a form, as text, in the order of the form."""

    pairs: tuple[tuple[str, str], ...] = ()

    def get(self, name: str, default: str = "") -> str:
        """The first value of a field."""
        return next((value for key, value in self.pairs if key == name), default)

    def all(self, name: str) -> tuple[str, ...]:
        """Every value of a field that may stand several times."""
        return tuple(value for key, value in self.pairs if key == name)

    def has(self, name: str) -> bool:
        """Whether the field was sent at all."""
        return any(key == name for key, _ in self.pairs)

    @property
    def once(self) -> str:
        """The mark that makes a form count once."""
        return self.get("once")

    def values(self) -> dict[str, str]:
        """Every field by its name; the last of several."""
        return dict(self.pairs)


def clean(text: str) -> str:
    """Text without control signs, its line ends and accents written in one way."""
    plain = text.replace("\r\n", "\n").replace("\r", "\n")
    return unicodedata.normalize("NFC", UNSEEN.sub("", plain))


async def read_typed(request: Request) -> Typed:
    """The fields of the request's form; nothing for a request without one. Files are not taken."""
    if request.method not in {"POST", "PUT", "PATCH"}:
        return Typed()
    kind = request.headers.get("content-type", "").partition(";")[0].strip().lower()
    if kind not in {"application/x-www-form-urlencoded", "multipart/form-data"}:
        return Typed()
    try:
        async with request.form(max_files=0, max_fields=MOST_FIELDS, max_part_size=LONGEST_FIELD) as form:
            items = form.multi_items()
    except (UnicodeError, LookupError) as error:  # the request names a charset that cannot be one
        raise HTTPException(400) from error
    typed = Typed(
        tuple((clean(name)[:200], clean(value)) for name, value in items if not isinstance(value, UploadFile))
    )
    request.state.typed = typed  # for the error pages, which must not lose it
    return typed


class Values(dict[str, str]):
    """What stands in the fields; a field that was not sent back is empty, and no page fails for it."""

    def __missing__(self, name: str) -> str:
        return ""


@dataclass(slots=True)
class Form:
    """What a template needs of a form: what stands in its fields, and what is wrong with which.

    Attributes:
        values: the text of every field
        faults: a sentence for each field that cannot be used, in the order of the form
        theirs: what somebody else saved meanwhile, field by field
        is_stale: whether somebody else saved meanwhile, even where no field shows what
        once: the mark that makes this form count once
    """

    values: Mapping[str, str] = field(default_factory=dict)
    faults: dict[str, str] = field(default_factory=dict)
    theirs: Mapping[str, str] = field(default_factory=dict)
    is_stale: bool = False
    once: str = ""

    def __post_init__(self) -> None:
        self.values = Values(self.values)

    @property
    def is_right(self) -> bool:
        """Whether every field can be used."""
        return not self.faults


class Reader:
    """Reads the fields of a form one by one, collecting faults."""

    def __init__(self, typed: Typed) -> None:
        self.typed = typed
        self.faults: dict[str, str] = {}

    @property
    def form(self) -> Form:
        """The form to show again."""
        return Form(values=self.typed.values(), faults=self.faults, once=self.typed.once)

    def fault(self, name: str, sentence: str) -> None:
        """Notes what is wrong with a field; the first sentence stays."""
        self.faults.setdefault(name, sentence)

    def text(self, name: str, *, most: int = 200, needed: str = "") -> str:
        """A line or a paragraph of text.

        Args:
            name: the field
            most: the most characters
            needed: the sentence to show when it is empty; empty when it may be left out
        """
        value = self.typed.get(name).strip()
        if not value and needed:
            self.fault(name, needed)
        if len(value) > most:
            self.fault(name, f"It has {len(value):,} characters; {most:,} are the most.")
        return value[:most]

    def line(self, name: str, *, most: int = 200, needed: str = "") -> str:
        """Text on one line."""
        return " ".join(self.text(name, most=most, needed=needed).split())

    def email(self, name: str, *, needed: str = "") -> str:
        """An e-mail address."""
        value = self.text(name, most=254, needed=needed)
        if value and not EMAIL.fullmatch(value):
            self.fault(name, f"{quoted(value)} is not an e-mail address. Write it as ada@example.com.")
        return value

    def choice(self, name: str, allowed: Iterable[str], *, default: str | None = None) -> str:
        """One of the values that a list offers."""
        offered = list(allowed)
        value = self.typed.get(name) or (default or "")
        if value not in offered:
            self.fault(name, "Choose one of the list.")
            return default or offered[0]
        return value

    def ticked(self, name: str) -> bool:
        """Whether a box is ticked."""
        return self.typed.get(name) not in {"", "0", "off", "false"}

    def whole(self, name: str, *, least: int, most: int, default: int | None = None) -> int:
        """A whole number. Thousands may be set apart."""
        typed = self.typed.get(name).strip()
        value = in_plain_digits(typed)
        if not value and default is not None:
            return default
        if not re.fullmatch(r"[+-]?[0-9]{1,9}", value):
            self.fault(name, f"{self._shown(typed)} Write a whole number such as {max(least, 1)}.")
            return least
        number = int(value)
        if not least <= number <= most:
            self.fault(name, f"{number} is outside {least:,} to {most:,}.")
        return min(max(number, least), most)

    def number(self, name: str, *, least: float, most: float, example: str, unit: str = "") -> float:
        """A decimal number, with or without its unit; thousands may be apart, a comma stand for a point."""
        typed = self.typed.get(name).strip()
        value = in_plain_digits(typed.removesuffix(unit.strip()).rstrip())
        if not re.fullmatch(r"[+-]?([0-9]{1,9}(\.[0-9]{0,6})?|\.[0-9]{1,6})", value):
            self.fault(name, f"{self._shown(typed)} Write a number such as {example}.")
            return least
        number = float(value)
        if not least <= number <= most:
            self.fault(name, f"{number:g}{unit} is outside {least:g} to {most:g}{unit}.")
        return min(max(number, least), most)

    def money(self, name: str, *, needed: bool = True, negative: bool = False) -> int:
        """An amount of money in cents. Thousands may be set apart."""
        value = self.typed.get(name).strip()
        if not value and not needed:
            return 0
        found = read_money(value)
        if found is None or (found < 0 and not negative):
            self.fault(name, f"{self._shown(value)} Write an amount such as 1,250.00.")
            return 0
        return found

    def day(self, name: str, *, needed: str = "") -> date | None:
        """A day."""
        value = self.text(name, most=40, needed=needed)
        if not value:
            return None
        try:
            day = date.fromisoformat(value) if re.fullmatch(r"\d{4}-\d{2}-\d{2}", value, re.ASCII) else None
        except ValueError:
            day = None
        if day is None or not 1990 <= day.year <= 2200:
            self.fault(name, f"{quoted(value)} is not a day. Write it as 2027-03-01.")
            return None
        return day

    def length(self, name: str, unit: LengthUnit, *, needed: bool = True) -> float | None:
        """A size in inches, in any notation that makers write."""
        value = self.typed.get(name).strip()
        if not value and not needed:
            return None
        try:
            return float(parse_length(value, unit))
        except LengthError as error:
            self.fault(name, str(error))
            return None

    @staticmethod
    def _shown(value: str) -> str:
        return f"{quoted(value)} cannot be used here." if value else "This is empty."


def in_plain_digits(typed: str) -> str:
    """A typed number without marks between thousands, its decimals behind a point; else as it was typed.

    What could be either, such as 1,200, has thousands, as in an amount of money; nobody writes thousands
    behind a nought, so 0,125 is an eighth.
    """
    if GROUPED.fullmatch(typed):
        return re.sub(r"[, \u00a0\u202f]", "", typed)
    return typed.replace(",", ".") if WITH_COMMA.fullmatch(typed) else typed


def read_money(text: str) -> int | None:
    """Cents from a typed amount such as 1,250.00 or 1250; None when it is none."""
    plain = in_plain_digits(text.replace(" ", "").replace("\u00a0", "").lstrip("$€£"))
    if not re.fullmatch(r"[+-]?(\d{1,9}(\.\d{0,2})?|\.\d{1,2})", plain, re.ASCII):
        return None
    try:
        amount = Decimal(plain)
    except InvalidOperation:
        return None
    return int(amount * 100) if abs(amount) <= MONEY_LIMIT else None
