"""One quantity is rounded once: the other system says what is shown, and what follows from marked sizes adds up in them."""

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.brief import read_brief
from woodlib.commission import commission_of
from woodlib.commission.shop_files import shop_files
from woodlib.data_files import data_path
from woodlib.handout.client_page import client_page, shop_page
from woodlib.setting_out.plan import set_out
from woodlib.ways.index import verdict_for
from woodlib.ways.piece import Piece
from woodlib.ways.registry import every_way
from woodlib.ways.rules import Cut

INCH = Fraction(254, 10)
_NUMBER = r"(?:\d+-)?\d+/\d+|\d+"
INCH_FIRST = re.compile(rf"(?<![\d/.-])({_NUMBER}) in \((\d+(?:\.\d+)?) mm\)")
MM_FIRST = re.compile(rf"(?<![\d/.,-])(\d+(?:\.\d+)?) mm \(({_NUMBER}) in\)")
MONTHS = [6, 6, 7, 8, 9, 10, 11, 11, 10, 8, 7, 6]


def _inches(text: str) -> Fraction:
    whole, _, part = text.rpartition("-")
    return Fraction(whole or 0) + Fraction(part)


def _apart(inches: str, mm: str, inch_first: bool) -> tuple[Fraction, Fraction]:
    """How far a pair is apart in mm, and how far it may be: half of what is in brackets, or what both show as it is."""
    apart = abs(_inches(inches) * INCH - Fraction(mm))
    if "." in mm and not mm.endswith(".5") or _inches(inches).denominator == 64:
        return apart, INCH / 64 + Fraction(1, 10)  # to 1/64 in and 0.1 mm: each system from the same size
    if inch_first:
        return apart, Fraction(1, 4) if Fraction(mm) < 25 else Fraction(1, 2)
    return apart, INCH / 64 if Fraction(mm) < 25 else INCH / 32


def pairs_apart(text: str) -> list[str]:
    """Every pair of inches and millimetres in a text that does not say one size."""
    wrong = []
    for pattern, inch_first in ((INCH_FIRST, True), (MM_FIRST, False)):
        for found in pattern.finditer(text):
            apart, allowed = _apart(*found.groups()[:: 1 if inch_first else -1], inch_first)
            if apart > allowed + Fraction(1, 10**6):
                wrong.append(found.group())
    return wrong


def test_a_pair_that_disagrees_is_found():
    assert pairs_apart("1/16 in (2 mm) and 1/8 in (3 mm)") == ["1/16 in (2 mm)"]
    assert pairs_apart("8 mm (1/4 in), 18 in (457 mm), 0.6 mm (1/64 in)") == ["8 mm (1/4 in)"]


def test_every_pair_of_units_says_one_size(named_brief):
    commission = commission_of(read_brief(named_brief))
    text = client_page(commission) + shop_page(commission)
    plan = set_out(commission.brief, verdict=commission.built)
    for name, make in shop_files(plan, commission.built.cuts).items():
        text += make().decode() if name.endswith((".csv", ".txt")) else ""
    text = re.sub(r"\s+", " ", text.replace("\u2060", "").replace("&nbsp;", " ").replace("\u00a0", " "))
    assert not pairs_apart(text)


@pytest.mark.parametrize("first", ["customary", "metric"])
@given(data=st.data())
def test_what_follows_from_marked_sizes_adds_up_in_them(first, data):
    """Every size with a chain is the sum of what is marked, and then what the wood does; and on the safe side."""
    width = data.draw(st.integers(8, 40)) * (Fraction(254, 10000) if first == "customary" else Fraction(25, 1000))
    border = data.draw(st.sampled_from([Fraction(5, 100), Fraction(762, 10000)]))
    piece = Piece("white oak", float(width), 1.2, 0.019, float(border))
    way = data.draw(st.sampled_from(every_way()))
    verdict = verdict_for(way.key, piece, 8, MONTHS, first=first)
    for cut in (*verdict.cuts, *verdict.states):
        if not cut.chain:
            continue
        marked = sum(
            times * (part if isinstance(part, Fraction) else part.written_m(first)) for times, part in cut.chain
        )
        step = 0.0254 / 32 if first == "customary" else 0.0005
        off = float(cut.written_m(first)) - (float(marked) + cut.moved)
        assert -1e-9 <= (off if cut.rounding == "up" else -off) < step, (way.key, cut.key)
        fitted = any(times > 0 and isinstance(part, Cut) and part.rounding == "down" for times, part in cut.chain)
        if cut.rounding == "up" and not fitted:
            assert float(cut.written_m(first)) > cut.metres - 1e-9, (way.key, cut.key)
        assert verdict.judged.marked[cut.key].value == float(cut.written_m(first))


def test_the_line_of_a_frame_follows_from_what_is_marked():
    """White oak, 20 by 44 in, border 2 in, at 8 %: what the list marks leaves the line that January and July begin from."""
    piece = Piece("white oak", "20 in", "44 in", "7/8 in", "2 in")
    verdict = verdict_for("frame_panel", piece, 8, MONTHS)
    inch = Fraction(254, 10_000)
    panel, shoulder, line = (
        verdict.cut(key).written_m() / inch for key in ("panel_width", "edge_shoulder", "line_today")
    )
    assert line == (16 - panel) / 2 + shoulder
    driest, dampest, change = (
        verdict.cut(key).written_m() / inch for key in ("line_driest", "line_dampest", "line_change")
    )
    assert (
        0 <= driest - dampest - change <= Fraction(1, 16) and dampest < line < driest
    )  # each rounded to its safe side
    assert verdict.cut("line_today").text() in verdict.reason and verdict.cut("line_change").text() in verdict.reason


@pytest.fixture(params=["named/door", "named/shelf", "seat"])
def named_brief(request):
    if request.param == "seat":
        return data_path("briefs/reading_nook_seat.toml")
    return f"{__file__.rsplit('/', 1)[0]}/{request.param}.toml"
