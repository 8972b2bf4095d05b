"""Reading and writing of lengths and other quantities: exact round trips, safe rounding, one text for one number."""

import json
import math
import re
from decimal import Decimal
from fractions import Fraction

import numpy as np
import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.units import (
    FORMATS,
    Quantity,
    both,
    exact_metres,
    inch_fraction,
    length_range,
    metres,
    millimetres,
    number_in,
    read_length,
    read_quantity,
    registry,
    write,
)

INCH = Fraction(254, 10_000)  # metres, exact by definition since 1959
lengths_m = st.floats(-50, 50, allow_nan=False, allow_subnormal=False)
exact_lengths_m = st.fractions(-50, 50, max_denominator=10**6)
denominators = st.sampled_from([16, 32, 64])


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("1-1/2 in", "3/2"),
        ('1 1/2"', "3/2"),
        ("1-1/2in", "3/2"),
        ("7/8", "7/8"),
        ("1-1/2", "3/2"),
        ('18"', "18"),
        ("18 inches", "18"),
        ("18 IN.", "18"),
        ("1' 6-3/8\"", "147/8"),
        ("1'6 3/8", "147/8"),
        ("1'-6 3/8\"", "147/8"),
        ("1' 6\"", "18"),
        ("1 ft 6 in", "18"),
        ("6'", "72"),
        ("1.5 ft", "18"),
        ("1 yd", "36"),
        ("\u22121/4 in", "-1/4"),
        ("-1' 6\"", "-18"),
        ("1\u00bd\u2033", "3/2"),
        ("1 \u00bd in", "3/2"),
        ("1-\u00bd in", "3/2"),
        ("\u00be\u201d", "3/4"),
        ("\u215f16 in", "1/16"),
        ("1\u00b3\u2044\u2081\u2086 in", "19/16"),
        ("1\u20116\u20448 in", "7/4"),
        ("1\u2019 6\u201d", "18"),
        ("18''", "18"),
        ("\u00a01-1/2\u2009in\u00a0", "3/2"),
    ],
)
def test_inches_are_read_as_the_shop_writes_them(text, inches):
    assert exact_metres(text) == Fraction(inches) * INCH


@pytest.mark.parametrize(
    ("text", "millimetre"),
    [
        ("38mm", "38"),
        ("3.8 cm", "38"),
        ("455 mm", "455"),
        ("3,8 cm", "38"),
        ("0,500 m", "500"),
        (".5 m", "500"),
        ("1,25 m", "1250"),
        ("1.2345 m", "1234.5"),
        ("1e-3 m", "1"),
        ("250 \u00b5m", "0.25"),
        ("2 metres", "2000"),
        ("1/2 mm", "1/2"),
    ],
)
def test_metric_lengths_are_read_exactly(text, millimetre):
    assert exact_metres(text) == Fraction(millimetre) / 1000


@pytest.mark.parametrize("value", [18, 18.0, Fraction(18), Decimal("18.0"), np.float64(18), np.int32(18), "18", "18,0"])
def test_plain_numbers_take_the_declared_unit(value):
    assert exact_metres(value, "in") == 18 * INCH
    assert metres(value, name="width", default_unit="mm") == 0.018


def test_a_decimal_typed_as_one_tenth_is_one_tenth():
    assert exact_metres(0.1, "mm") == Fraction(1, 10_000)
    assert exact_metres(Quantity(0.25, "inch")) == INCH / 4


def test_quantities_of_any_registry_are_accepted():
    for quantity in (Quantity(18, "inch"), pint.UnitRegistry().Quantity(18, "inch"), pint.Quantity(18, "inch")):
        assert read_length(quantity) == Quantity(0.4572, "meter")
    assert read_length(Quantity(1, "mile") / 1760).magnitude == pytest.approx(0.9144, rel=1e-12)
    assert read_length("18 in")._REGISTRY is registry


def test_text_of_a_quantity_reads_back():
    assert read_length(str(Quantity(0.0381, "meter"))) == Quantity(0.0381, "meter")


@given(feet=st.integers(0, 20), whole=st.integers(0, 11), part=st.integers(0, 63), form=st.integers(0, 4))
def test_every_spelling_of_a_tick_comes_back_as_one_text(feet, whole, part, form):
    mixed = feet * 12 + whole
    exact = mixed + Fraction(part, 64)
    texts = [
        f"{mixed}-{part}/64 in",
        f'{mixed} {part}/64"',
        f"{exact} in",
        f"{feet}' {whole}-{part}/64\"",
        f"{float(exact)!r} inches",
    ]
    assert exact_metres(texts[form]) == exact * INCH
    written = inch_fraction(exact_metres(texts[form]), 64)
    assert exact_metres(written) == exact * INCH
    assert inch_fraction(exact_metres(written), 64) == written


@given(tenths=st.integers(-20_000, 20_000))
def test_millimetres_round_trip(tenths):
    text = millimetres(Fraction(tenths, 10_000), 0.1)
    assert exact_metres(text) == Fraction(tenths, 10_000)
    assert millimetres(metres(text, name="gap"), 0.1) == text


@given(length=exact_lengths_m, denominator=denominators)
def test_exact_rounding_keeps_to_its_side(length, denominator):
    up, down, near = (exact_metres(inch_fraction(length, denominator, way)) for way in ("up", "down", "nearest"))
    assert down <= length <= up
    assert up - down in (0, INCH / denominator)
    assert near in (up, down) and abs(near - length) <= INCH / denominator / 2


@given(length=lengths_m, denominator=denominators)
def test_float_rounding_keeps_to_its_side_but_for_noise(length, denominator):
    noise = Fraction(1e-9) * max(abs(Fraction(length)), INCH / denominator)
    assert exact_metres(inch_fraction(length, denominator, "up")) >= Fraction(length) - noise
    assert exact_metres(inch_fraction(length, denominator, "down")) <= Fraction(length) + noise
    assert exact_metres(millimetres(length, 0.5, "up")) >= Fraction(length) - noise - Fraction(1, 10**12)


@given(ticks=st.integers(-3000, 3000), denominator=denominators, ulps=st.integers(-8, 8))
def test_float_noise_never_moves_a_tick(ticks, denominator, ulps):
    noisy = float(Fraction(ticks, denominator) * INCH)
    noisy += ulps * math.ulp(noisy)
    expected = inch_fraction(Fraction(ticks, denominator) * INCH, denominator)
    assert {inch_fraction(noisy, denominator, way) for way in ("up", "down", "nearest")} == {expected}


def test_a_quarter_inch_gap_stays_a_quarter_inch():
    assert inch_fraction(0.25 * 0.0254, 64, "up") == "1/4 in"
    assert inch_fraction(sum([0.1 * 0.0254] * 5) / 2, 64, "up") == "1/4 in"
    assert inch_fraction(Fraction(1, 4) * INCH + Fraction(1, 10**15), 64, "up") == "17/64 in"


@given(a=lengths_m, b=lengths_m, way=st.sampled_from(["nearest", "up", "down"]))
def test_a_longer_length_is_never_written_shorter(a, b, way):
    short, long = sorted((a, b))
    assert exact_metres(inch_fraction(short, 32, way)) <= exact_metres(inch_fraction(long, 32, way))


@given(length=lengths_m)
def test_up_and_down_mirror(length):
    def negated(text):
        return text if text.startswith("0 ") else text[1:] if text.startswith("-") else "-" + text

    assert inch_fraction(-length, 16, "down") == negated(inch_fraction(length, 16, "up"))
    assert inch_fraction(-length, 16) == negated(inch_fraction(length, 16))


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("1-1/2 in", "1-1/2 in"),
        ("18 in", "18 in"),
        ("0.1875 in", "3/16 in"),
        ("0 in", "0 in"),
        ("-0.01 in", "0 in"),
        ("15.97 in", "16 in"),
    ],
)
def test_inches_are_set_without_surprises(text, written):
    assert inch_fraction(exact_metres(text)) == written
    assert inch_fraction(float(exact_metres(text))) == written


def test_a_length_is_rounded_once_and_the_other_system_says_what_is_shown():
    # 1/4 in is 6.35 mm and 3/16 in 4.76: told in halves below 25 mm, 6.5 and 5; 5 mm is 6.3 thirty-seconds.
    assert both(0.0048, 16, 1, "up") == "1/4 in (6.5 mm)"
    assert both(0.0048, 16, 1, "down") == "3/16 in (5 mm)"
    assert both(0.0048, first="metric") == "5 mm (3/16 in)"
    # One and two sixteenths, and one and two millimetres, are not told alike.
    assert [both(k * 0.0254 / 16) for k in (1, 2)] == ["1/16 in (1.5 mm)", "1/8 in (3 mm)"]
    assert [both(k / 1000, first="metric") for k in (1, 2)] == ["1 mm (1/32 in)", "2 mm (3/32 in)"]
    # In the finest steps a size is told as it is: a border of 1 mm is not 1.2 mm.
    assert both(0.001, 64, 0.1) == "3/64 in (1 mm)"


@pytest.mark.parametrize(
    ("low", "mid", "high", "text"),
    [
        (0.0030, 0.0048, 0.0063, "about 3/16 in (5 mm), could be 1/8 to 1/4 in (3 to 6.5 mm)"),
        (-0.0063, -0.0048, -0.0030, "about 3/16 in (5 mm), could be 1/8 to 1/4 in (3 to 6.5 mm)"),
        (-0.0063, -0.0048, 0.0030, "about -3/16 in (-5 mm), could be -1/4 to 1/8 in (-6.5 to 3 mm)"),
        (0.0048, 0.0048, 0.0048, "about 3/16 in (5 mm)"),
        (0.0, 0.0, 0.0, "less than 1/64 in (under 0.4 mm)"),
        (-0.0002, 0.0, 0.0002, "less than 1/64 in (under 0.4 mm)"),
        (0.0, 0.0008, 0.0012, "about 1/32 in (0.8 mm), could be 0 to 3/64 in (0 to 1.2 mm)"),
        (0.0016, 0.0024, 0.0032, "about 3/32 in (2.5 mm), could be 1/16 to 1/8 in (1.5 to 3 mm)"),
    ],
)
def test_a_range_reads_as_a_sentence(low, mid, high, text):
    assert length_range(low, mid, high) == text
    assert length_range(high, mid, low) == text


@given(numbers=st.lists(lengths_m, min_size=3, max_size=3))
def test_every_range_can_be_written(numbers):
    low, mid, high = sorted(numbers)
    text = length_range(low, mid, high)
    assert text.startswith(("about ", "less than ")) and " in" in text and " mm" in text
    if high <= 0 or low >= 0:
        assert text == length_range(-low, -mid, -high)
        assert not re.search(r"(?<![0-9])-", text)


@pytest.mark.parametrize(
    ("number", "kind", "text"),
    [
        (0.0381, "length", "1-1/2 in (38 mm)"),
        (0.0008, "fine_length", "1/32 in (0.8 mm)"),
        (8.04, "moisture", "8.0 % MC"),
        (44.6, "humidity", "45 % RH"),
        (20.0, "temperature", "68 \u00b0F (20 \u00b0C)"),
        (-40.0, "temperature", "-40 \u00b0F (-40 \u00b0C)"),
        (12.34, "percent", "12.3 %"),
        (3.4e6, "stress", "493 psi (3.4 MPa)"),
        (0.0042, "strain", "0.42 %"),
        (45.0, "angle", "45\u00b0"),
        (1.2, "days", "1 day"),
        (12, "days", "12 days"),
        (4.2, "mass", "9.3 lb (4.2 kg)"),
        (7, "count", "7"),
    ],
)
def test_each_kind_of_number_has_one_way_to_be_written(number, kind, text):
    assert write(number, kind) == text


def test_metric_may_come_first():
    assert write(20.0, "temperature", first="metric") == "20 \u00b0C (68 \u00b0F)"


def from_table(table: dict, number: float) -> str:
    """The text as another program would write it, from the JSON table and the stated rounding rule alone."""

    def steps_of(part, number):
        steps = (number * part["scale"] + part["offset"]) * part["steps_per_unit"]
        return steps, math.floor(abs(steps) + 0.5 + 1e-9 * max(1.0, abs(steps)))

    def part_text(part, number):
        steps, whole = steps_of(part, number)
        sign = "-" if whole and steps < 0 else ""
        if part["denominator"]:
            inches, rest = divmod(whole, part["denominator"])
            common = math.gcd(rest, part["denominator"])
            fraction = f"{rest // common}/{part['denominator'] // common}" if rest else ""
            digits = "-".join(piece for piece in (str(inches) if inches or not rest else "", fraction) if piece)
        else:
            digits = f"{whole / part['steps_per_unit']:.{part['decimals']}f}"
            if part["trim"] and "." in digits:
                digits = digits.rstrip("0").rstrip(".")
        return sign + digits + (part["one"] if part["one"] and digits == "1" and not sign else part["suffix"])

    head, *rest = table["parts"]
    if not rest or head["denominator"] == 64:
        return part_text(head, number) + "".join(f" ({part_text(part, number)})" for part in rest)
    steps, whole = steps_of(head, number)
    said = (math.copysign(whole, steps) / head["steps_per_unit"] - head["offset"]) / head["scale"]
    (tail,) = rest
    if tail["halves_below"]:
        tail = {**tail, "steps_per_unit": 2 if abs(said) < tail["halves_below"] else 1, "decimals": 1}
    return f"{part_text(head, number)} ({part_text(tail, said)})"


@given(kind=st.sampled_from(sorted(FORMATS)), number=st.floats(-1e4, 1e4, allow_subnormal=False))
def test_the_table_of_formats_is_enough_to_write_the_same_text(kind, number):
    table = json.loads(json.dumps(FORMATS[kind].as_table()))
    assert from_table(table, number) == write(number, kind)


@pytest.mark.parametrize(
    ("text", "unit", "expected"),
    [
        ("68 degF", "degC", 20.0),
        ("68 \u00b0F", "degC", 20.0),
        ("68\u2109", "degC", 20.0),
        ("-5 C", "degC", -5.0),
        ("20 degC", "degC", 20.0),
        ("45 %", "percent", 45.0),
        ("45\uff05", "percent", 45.0),
        ("7,5 percent", "percent", 7.5),
        ("0.68 g/cm\u00b3", "kg/m^3", 680.0),
        ("10 MPa", "Pa", 1e7),
        ("10 mpa", "MPa", 10.0),
        ("30\u00b0", "deg", 30.0),
        ("2 weeks", "day", 14.0),
        ("38 mm", "cm", 3.8),
    ],
)
def test_other_quantities_are_read(text, unit, expected):
    assert number_in(text, unit, name="value") == pytest.approx(expected, rel=1e-12)


def test_a_room_at_68_fahrenheit_is_exactly_20_celsius():
    assert read_quantity("68 degF", "degC", name="room").magnitude == 20.0
    assert read_quantity(68, "degC", name="room", default_unit="degF").magnitude == 20.0


@given(celsius=st.integers(-400, 1000).map(lambda tenths: tenths / 10))
def test_temperatures_round_trip_through_fahrenheit(celsius):
    fahrenheit = read_quantity(f"{celsius} degC", "degF", name="room")
    assert number_in(fahrenheit, "degC", name="room") == pytest.approx(celsius, abs=1e-9)


@given(text=st.text(max_size=100))
def test_any_text_is_a_length_or_one_sentence(text):
    try:
        assert math.isfinite(float(exact_metres(text, "mm")))
    except ValueError as error:
        assert len(str(error).splitlines()) == 1 and str(error).endswith(".")
