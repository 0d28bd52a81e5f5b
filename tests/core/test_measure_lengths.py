"""Sizes as makers write them: what is taken, what is refused and with which sentence, what is printed."""

import time
from fractions import Fraction

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from casewright.measure.lengths import (
    LengthError,
    LengthUnit,
    from_ticks,
    parse_length,
    show,
    show_feet,
    show_mm,
    to_ticks,
    write_length,
)

INCH, MM = LengthUnit.INCH, LengthUnit.MILLIMETRE
FORTY_FEET = 40 * 12
HUNDRED_FEET_IN_TICKS = 19_507_200  # 100 ft = 30,480 mm, at 640 ticks each

ticks = st.integers(-HUNDRED_FEET_IN_TICKS, HUNDRED_FEET_IN_TICKS)


def metric(millimetres: str) -> Fraction:
    """Inches in so many millimetres, by the definition of the inch."""
    return Fraction(millimetres) / Fraction("25.4")


SAME_IN_BOTH_SHOPS = [
    ("13/16", Fraction(13, 16)),
    ("1 1/2", Fraction(3, 2)),
    ("1-1/2", Fraction(3, 2)),
    ('3-5/8"', Fraction(29, 8)),
    ("1' 3-5/8\"", Fraction(125, 8)),
    ("1'3 5/8\"", Fraction(125, 8)),
    ("1′ 3⅝″", Fraction(125, 8)),
    ("1’ 3 5/8”", Fraction(125, 8)),
    ("1‘ 3“", Fraction(15)),
    ("1' 3''", Fraction(15)),
    ("1' 3", Fraction(15)),
    ("3'-6\"", Fraction(42)),
    ("3' - 6 1/2\"", Fraction(85, 2)),
    ("1ft 3in", Fraction(15)),
    ("1ft3in", Fraction(15)),
    ("1 ft 3-1/2 in", Fraction(31, 2)),
    ("1 ft. 3 in.", Fraction(15)),
    ("1 foot 3 inches", Fraction(15)),
    ("2 ft", Fraction(24)),
    ("2'", Fraction(24)),
    ("1.5 ft", Fraction(18)),
    ("1-1/2'", Fraction(18)),
    ("4' 0\"", Fraction(48)),
    ("¾", Fraction(3, 4)),
    ("1½", Fraction(3, 2)),
    ("1 ½", Fraction(3, 2)),
    ("1-½", Fraction(3, 2)),
    ("⅛ in", Fraction(1, 8)),
    ("⅜ in", Fraction(3, 8)),
    ("⅝ in", Fraction(5, 8)),
    ("⅞ in", Fraction(7, 8)),
    ("2⅓", Fraction(7, 3)),
    ("⅔", Fraction(2, 3)),
    ("13⁄16", Fraction(13, 16)),
    ("13 / 16", Fraction(13, 16)),
    ("1‑1/2", Fraction(3, 2)),
    ("5/4", Fraction(5, 4)),
    ("15 5/8 in", Fraction(125, 8)),
    ("15\u00a05/8\u2009in", Fraction(125, 8)),
    ("15.625in", Fraction(125, 8)),
    ("15 inches", Fraction(15)),
    ("15 IN", Fraction(15)),
    ('7.125"', Fraction(57, 8)),
    ("397 mm", metric("397")),
    ("397mm", metric("397")),
    ("397 MM", metric("397")),
    ("397 millimetres", metric("397")),
    ("39.7cm", metric("397")),
    ("39,7 cm", metric("397")),
    ("0.4 m", metric("400")),
    ("0,4 m", metric("400")),
    ("1,234 m", metric("1234")),
    ("0,125 mm", metric("0.125")),
    ("3 1/2 mm", metric("3.5")),
    ("1½ mm", metric("1.5")),
    ("  13/16  ", Fraction(13, 16)),
    ("13/16\n", Fraction(13, 16)),
    ("0 in", Fraction(0)),
    ("1/4096", Fraction(1, 4096)),
    ("100 ft", Fraction(1200)),
]

BARE_NUMBERS = [
    ("397", INCH, Fraction(397)),
    ("397", MM, metric("397")),
    ("15.625", INCH, Fraction(125, 8)),
    ("188.35", MM, metric("188.35")),
    (".75", INCH, Fraction(3, 4)),
    (".75", MM, metric("0.75")),
    ("39,7", MM, metric("39.7")),
    ("0", MM, Fraction(0)),
]

NOT_A_SIZE = [
    "NaN", "nan", "inf", "-inf", "infinity", "None", "true", "a", "in", "mm", '"', "'", "''", "/", "-", ".",
    ",", "1e5", "1E5", "1e-3", "0x10", "0b1", "1_000", "1j", "1+1", "2*3", "9**9", "(1)", "=1", "1;2", "1=1",
    "$5", "3/", "/4", "1//2", "1 2 3", "1/2/3", "5/4/3", "1 2", "1-2", "1--1/2", "1 - 1/2", "1 1/2 1/2",
    "1.5 1/2", "1.1/2", "1/2.5", "1/-2", "3.", "3..4", "1.2.3", "1. 5", "+3", "--3", "- -3", "-3", "- 3",
    "−3", "–3", "-½", "-0", "1/0", "0/0", "3 1/0", "8 1/0", "1' 1/0\"", "1 5/4", "2 4/4", "1/4097",
    "1/999999999", "3 ½ ½", "½½", "1½2", "½/2", "1/½", "1' 12\"", "1' 13\"", "1' 1' 3\"", "1\" 3'",
    "1.5' 3\"", "½' 3\"", "1' 3 mm", "1 ft 20 cm", "1' -", "1'1'", "3 in 1/2", "12 furlongs", "12 px",
    "3 in in", "3 mm mm", "3 inmm", "3 feets", "1 m 20 cm", "1 000", "1'000", "1,234", "1,5 in", "1,5 ft",
    "1,234.5", "1,234,567 mm", "1,234 mm", "12,345 cm", "39,,7 cm", ",5 cm", "5, cm", "²", "3²", "x²", "¹⁄₂",
    "↉", "⅟2", "½⁄", "Ⅻ", "①", "四", "½ o'clock", "４", "1４", "٣", "۳", "३", "１／２", "7\u200e", "\u202e7",
    "7\u2066", "\ufeff7", "7\u200b", "7\u00ad1", "1\u0301", "7\x00", "\x007", "1\x002", "1\t2", "1\n2",
    "7\x1b[0m", "7\x7f", "\ud800", "1\u2028", "1\u0085", "🪵", "7 🪚", "1" * 10, "0" * 39, "1/" + "1" * 10,
    "0." + "1" * 10, "101 ft", "30.481 m", "999999999", "1 " * 19 + "1", "1/" * 19 + "1", "'" * 40, "-" * 40,
    "½" * 40,
]  # fmt: skip


@pytest.mark.parametrize(("typed", "expected"), SAME_IN_BOTH_SHOPS)
@pytest.mark.parametrize("shop", LengthUnit)
def test_a_size_that_says_its_unit_is_read_exactly_in_either_shop(shop, typed, expected):
    size = parse_length(typed, shop)

    assert size == expected
    assert type(size) is Fraction


@pytest.mark.parametrize(("typed", "shop", "expected"), BARE_NUMBERS)
def test_a_bare_number_is_in_the_unit_of_the_shop(typed, shop, expected):
    assert parse_length(typed, shop) == expected


@pytest.mark.parametrize("typed", NOT_A_SIZE)
@pytest.mark.parametrize(
    ("shop", "example"),
    [(INCH, "Write it as 7-13/32, 7.4 or 188 mm."), (MM, "Write it as 188, 188.5 or 7-13/32 in.")],
)
def test_what_is_not_a_size_is_refused_with_an_example_in_the_unit_of_the_shop(shop, example, typed):
    with pytest.raises(LengthError) as refusal:
        parse_length(typed, shop)

    assert refusal.value.message.startswith("“")
    assert refusal.value.message.endswith(example)
    assert refusal.value.message.isprintable()


@pytest.mark.parametrize("typed", ["1,5", "39,7", "1200.001", "1201"])
def test_what_makes_sense_only_in_millimetres_is_refused_in_a_shop_that_works_in_inches(typed):
    with pytest.raises(LengthError):
        parse_length(typed, INCH)

    assert parse_length(typed, MM) == metric(typed.replace(",", "."))


@pytest.mark.parametrize("typed", ["", " ", "\u00a0", "\n", " \t "])
def test_a_missing_size_is_said_to_be_missing(typed):
    with pytest.raises(LengthError, match=r"^There is no size here\. Write it as 7-13/32, 7\.4 or 188 mm\.$"):
        parse_length(typed)


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("8 1/0", "“8 1/0” is not a size: nothing can be divided by 0."),
        ("x", "“x” is not a size."),
        ("-3", "“-3” has a minus, and no size is less than nothing."),
        ("1 5/4", "“1 5/4” is not a size: beside a whole number the fraction is less than one."),
        (
            "1' 14\"",
            "“1' 14\"” is not feet and inches: beside feet stand 0 to 11 inches, in one or two digits.",
        ),
        ("1.5' 3\"", "“1.5' 3\"” has a part of a foot and inches too: give whole feet with the inches."),
        ("1' 3 mm", "“1' 3 mm” has feet and metric in one size."),
        ("12 furlongs", "“12 furlongs” is in no unit that is read here: they are in, ft, mm, cm and m."),
        ("7,5", "“7,5” has a comma, which can mean two things in inches: use a point, or nothing."),
        ("1,234 mm", "“1,234 mm” can be read as 1234 or as 1.234: write the one that is meant."),
        ("101'", "“101'” is more than 100 ft, and nothing here is that long."),
        ("1/5000", "“1/5000” is a finer fraction than can be marked or measured."),
        ("1234567890", "“1234567890” has too many digits to be a size."),
        ("7\x00", "“7\ufffd” has a sign in it that no size has."),
        ("7\u202e", "“7\ufffd” has a sign in it that no size has."),
        ("٣", "“٣” has a sign in it that no size has."),
        ("9" * 5000, "“999999999999999999999999…” is too long to be a size."),
    ],
)
def test_the_sentence_says_what_is_wrong_with_this_one(typed, sentence):
    with pytest.raises(LengthError) as refusal:
        parse_length(typed)

    assert refusal.value.message == f"{sentence} Write it as 7-13/32, 7.4 or 188 mm."
    assert str(refusal.value) == refusal.value.message


@pytest.mark.parametrize(
    "typed",
    [
        "9" * 5_000,
        "9" * 1_000_000,
        " " * 1_000_000,
        "½" * 1_000_000,
        "1/" * 500_000,
        "'" * 1_000_000,
        "\x00" * 10**6,
    ],
)
def test_a_flood_of_text_is_refused_at_once(typed):
    began = time.process_time()

    with pytest.raises(LengthError) as refusal:
        parse_length(typed)

    # A million signs take a few milliseconds to strip; a pattern that backtracks over them would take hours.
    # Half a second of the processor's time, not of the clock's: a busy machine is no fault.
    assert time.process_time() - began < 0.5
    assert len(refusal.value.message) < 150


def test_surrounding_spaces_do_not_count_towards_the_length_of_the_text():
    assert parse_length(" " * 100 + "13/16" + "\u00a0" * 100) == Fraction(13, 16)


@pytest.mark.parametrize(
    ("typed", "least", "sentence"),
    [
        ("1/64", Fraction(1, 8), "“1/64” is too small: 1/8 in is the least here."),
        ("0", Fraction(1, 128), "“0” is too small: ≈1/64 in is the least here."),
        ("-1", Fraction(-1, 2), "“-1” is too small: -1/2 in is the least here."),
    ],
)
def test_a_size_below_the_least_is_refused_with_the_least(typed, least, sentence):
    with pytest.raises(LengthError) as refusal:
        parse_length(typed, least=least)

    assert refusal.value.message == sentence


def test_the_least_itself_is_taken():
    assert parse_length("1/8", least=Fraction(1, 8)) == Fraction(1, 8)


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("-1/4", Fraction(-1, 4)),
        ("−1-1/2", Fraction(-3, 2)),
        ("- ¼", Fraction(-1, 4)),
        ("-2 mm", -metric("2")),
    ],
)
def test_a_minus_is_read_where_less_than_nothing_makes_sense(typed, expected):
    assert parse_length(typed, least=Fraction(-12)) == expected


@pytest.mark.parametrize("typed", ["--3", "- -3", "-", "3-", "-1' -", "1-", "-101 ft"])
def test_a_minus_is_read_once_and_before_a_size(typed):
    with pytest.raises(LengthError):
        parse_length(typed, least=Fraction(-1200))


@given(st.text(max_size=60), st.sampled_from(LengthUnit))
@example("1\u0000", INCH)
def test_any_text_at_all_is_a_size_or_is_refused(typed, shop):
    outcome = read_or_refuse(typed, shop)

    assert isinstance(outcome, Fraction | LengthError)


@given(st.text(alphabet="0123456789 /-.,'\"½⅝⁄′″fintmc", max_size=40), st.sampled_from(LengthUnit))
def test_any_jumble_of_the_signs_of_sizes_is_a_size_within_bounds_or_is_refused(typed, shop):
    outcome = read_or_refuse(typed, shop)

    assert isinstance(outcome, LengthError) or 0 <= outcome <= 1200


def read_or_refuse(typed: str, shop: LengthUnit) -> Fraction | LengthError:
    """What a door does with typed text: any other error gets through and fails the test."""
    try:
        return parse_length(typed, shop)
    except LengthError as refusal:
        return refusal


def test_every_64th_to_forty_feet_is_printed_and_read_back_exactly():
    sixty_fourths = range(FORTY_FEET * 64 + 1)

    read_back = [parse_length(show(mark / 64)) for mark in sixty_fourths]

    assert read_back == [Fraction(mark, 64) for mark in sixty_fourths]


@given(st.integers(0, FORTY_FEET * 64))
def test_feet_and_inches_are_read_back_exactly(mark):
    assert parse_length(show_feet(mark / 64)) == Fraction(mark, 64)


@given(st.integers(0, 100_000))
def test_tenths_of_a_millimetre_are_printed_and_read_back_exactly(tenths):
    inches = from_ticks(tenths * 64)

    assert parse_length(show_mm(inches), MM) == metric(f"{tenths}/10") == Fraction(to_ticks(inches), 16256)


@given(st.integers(0, 1_200_000))
def test_thousandths_of_an_inch_survive_the_store(thousandths):
    stored = to_ticks(parse_length(f"{thousandths / 1000:.3f}"))

    assert f"{from_ticks(stored):.3f}" == f"{thousandths / 1000:.3f}"


@given(st.integers(0, 3_000_000))
def test_hundredths_of_a_millimetre_survive_the_store(hundredths):
    stored = to_ticks(parse_length(f"{hundredths / 100:.2f} mm"))

    assert f"{stored / 640:.2f}" == f"{hundredths / 100:.2f}"


@given(st.fractions(-1200, 1200))
def test_a_size_is_stored_as_the_nearest_tick(size):
    stored = to_ticks(size)

    # Half a tick, and a millionth of one for a fraction too fine for the float that half is added to.
    assert abs(stored - size * 16256) <= Fraction(1, 2) + Fraction(1, 1_000_000)


@given(ticks)
def test_a_stored_size_read_and_stored_again_is_the_same(stored):
    assert to_ticks(from_ticks(stored)) == stored


@given(ticks, st.sampled_from(LengthUnit))
def test_a_size_in_a_file_is_read_back_to_the_same_tick(stored, shop):
    written = write_length(from_ticks(stored), shop)

    assert to_ticks(parse_length(written, shop, least=Fraction(-1200))) == stored
