"""What cannot be read or written is refused in one sentence that shows an accepted spelling."""

from decimal import Decimal

import numpy as np
import pytest

from woodlib.errors import WoodlibError
from woodlib.study.inputs import read_kind
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
    read_quantity,
    write,
)

UNREADABLE = [
    ("", "is empty"),
    ("   ", "is empty"),
    ("abc", "'abc', which is not a length"),
    ("in", "not a length"),
    ("nan", "not a length"),
    ("inf mm", "not a length"),
    ("1/0", "divides by zero"),
    ("1-1/0 in", "divides by zero"),
    ("1' 6-1/0\"", "divides by zero"),
    ("18", "a plain number without a unit"),
    (18, "a plain number without a unit"),
    ("5 kg", "a mass and not a length"),
    ("20 degC", "a temperature and not a length"),
    ("5 furlongs", "unit 'furlongs' is not known"),
    ("1,500 mm", "can be read two ways: write 1500 or 1.500"),
    ("1,500,000 mm", "not a length"),
    ("1' 1,500\"", "can be read two ways"),
    ("1 500 mm", "not a length"),
    ("1 - 1/2 in", "not a length"),
    ("1 2 in", "not a length"),
    ("1/2/3 in", "not a length"),
    ("--1 in", "not a length"),
    ("1.2.3 mm", "not a length"),
    ("9**9**9 mm", "not known"),
    ("__import__('os') in", "not a length"),
    ("1e99 mm", "longer than 1000 m"),
    ("9999999 in", "longer than 1000 m"),
    ("9" * 70 + " mm", "longer than 1000 m"),
    ("1" * 10_000, "a text of 10000 characters"),
    ("12\nfurlongs", "'12\\nfurlongs'"),
    ("<b>12</b>", "not a length"),
    pytest.param(10**5000, "a number of thousands of digits, beyond anything", id="huge"),
    pytest.param(Quantity(10**5000, "mile"), "a number of thousands of digits", id="huge quantity"),
    (True, "True, which is not a length"),
    (None, "None, which is not a length"),
    ([18], "not a length"),
    (1 + 2j, "not a length"),
    (float("nan"), "not a finite number"),
    (Decimal("Infinity"), "not a finite number"),
    (Quantity(5, "kg"), "a mass and not a length"),
    (Quantity(5, "m/s"), "of dimension"),
    (Quantity(float("inf"), "m"), "not a finite number"),
    (Quantity(np.array([1.0, 2.0]), "m"), "a list of 2 values"),
]


@pytest.mark.parametrize(("value", "fragment"), UNREADABLE)
def test_a_bad_length_is_refused_in_one_sentence(value, fragment):
    with pytest.raises(WoodlibError) as caught:
        exact_metres(value, name="width")
    sentence = str(caught.value)
    assert fragment in sentence and sentence.startswith("width ")
    assert "1-1/2 in" in sentence and "38 mm" in sentence
    assert len(sentence.splitlines()) == 1 and len(sentence) < 250


REFUSED = [
    (lambda: metres("-1 in", name="gap", minimum_m=0), "gap is '-1 in'; it must be at least 0 in (0 mm)"),
    (lambda: metres("0 in", name="gap", positive=True), "gap is '0 in'; it must be more than zero"),
    (lambda: metres("12 ft", name="gap", maximum_m=1.0), "it must be at most 39-3/8 in (1000 mm)"),
    (lambda: exact_metres("7/8", "mm"), "a fraction without a unit where plain numbers are in millimeter"),
    (lambda: exact_metres("7/8 in", "kg"), "default unit 'kg', which does not fit"),
    (lambda: exact_metres("7/8 in", "nonsense"), "'nonsense', which is not a unit"),
    (lambda: number_in("5 kg", "degC", name="room"), "a mass and not a temperature; write it like 68 degF or 20 degC"),
    (lambda: number_in("30 deg", "percent", name="humidity"), "an angle and not a percentage"),
    (lambda: number_in(Quantity(30, "deg"), "percent", name="humidity"), "an angle and not a percentage"),
    (lambda: number_in(45, "percent", name="humidity"), "a plain number without a unit; write it like 45 %"),
    (lambda: number_in("120 %", "percent", name="humidity", minimum=0, maximum=100), "between 0 and 100 percent"),
    (lambda: number_in("8 % RH", "percent", name="wood", share="mc"), "a relative humidity and not a moisture content"),
    (
        lambda: number_in("8 percent MC", "percent", name="air", share="rh"),
        "a moisture content and not a relative humidity",
    ),
    (
        lambda: number_in(0.25, "percent", name="air", default_unit="%", minimum=1, maximum=100),
        'if you mean 25 %, write "25 %"',
    ),
    (lambda: number_in(0.25, "percent", name="air", default_unit="%", minimum=50), "it must be at least 50 percent."),
    (lambda: read_kind("25 % MC", "humidity", "air"), "a moisture content and not a relative humidity"),
    (lambda: read_kind("25 % rh", "moisture", "wood"), "a relative humidity and not a moisture content"),
    (lambda: number_in("-1 kg", "kg", name="weight", minimum=0), "at least 0 kg"),
    (lambda: number_in("9 kg", "kg", name="weight", maximum=5), "at most 5 kg"),
    (lambda: read_quantity("12 m2/s", "m^2/s", name="flow"), "write a number with its unit"),
    (lambda: read_quantity("12", "bananas", name="flow"), "'bananas', which is not a unit"),
    (lambda: inch_fraction(0.01, 10), "denominator is 10; it must be one of 1, 2, 4"),
    (lambda: inch_fraction(0.01, 16, "sideways"), "rounding is 'sideways'"),
    (lambda: inch_fraction(float("nan")), "number to write is nan"),
    (lambda: number_in(10**5000, "percent", name="humidity", default_unit="%"), "beyond anything a workshop meets"),
    (lambda: inch_fraction(10**5000), "a number of thousands of digits; it must be one finite number"),
    (lambda: inch_fraction(1e300), "one finite number"),
    (lambda: FORMATS["strain"].text(float("nan")), "number to write is nan; it must be one finite number"),
    (lambda: inch_fraction("1/2"), "one finite number"),
    (lambda: inch_fraction(True), "one finite number"),
    (lambda: millimetres(0.01, 0.25), "step_mm is 0.25; it must be 1, 0.5 or 0.1"),
    (lambda: both(np.array([0.1])), "one finite number"),
    (lambda: length_range(0.1, 0.3, 0.2), "does not hold its middle value"),
    (lambda: length_range(0.1, float("nan"), 0.2), "number to write is nan"),
    (lambda: write(1, "furlongs"), "kind of number is 'furlongs'"),
    (lambda: write(1, "length", first="imperial"), "first is 'imperial'; it must be customary or metric"),
]


@pytest.mark.parametrize(("attempt", "fragment"), REFUSED)
def test_a_bad_call_is_refused_in_one_sentence(attempt, fragment):
    with pytest.raises(WoodlibError) as caught:
        attempt()
    assert fragment in str(caught.value)
    assert len(str(caught.value).splitlines()) == 1


def test_the_sentence_shows_accepted_spellings():
    with pytest.raises(WoodlibError, match='write it like 1-1/2 in, 1 1/2", 7/8 in, 1\' 6-3/8", 38 mm or 3.8 cm'):
        metres("wide", name="width")
