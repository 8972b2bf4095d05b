"""The named commissions in both systems: no list and no page for the shop shows a size that its rule does not have."""

import re
from fractions import Fraction
from pathlib import Path

import pytest

from woodlib.brief import read_brief
from woodlib.commission import commission_of
from woodlib.commission.in_the_shop import gluing_up, the_finish, the_shop
from woodlib.commission.ready import stock_ready
from woodlib.commission.shop import (
    blanks_to_cut,
    dowels_to_bore,
    holes_to_bore,
    order_of_cuts,
    parts_to_cut,
    roundings_shown,
    setting_out_of,
    weight_and_wood,
)
from woodlib.commission.what_now import mishaps
from woodlib.commission.workshop import cut_list
from woodlib.setting_out.lists import board_rows, cut_rows, dowel_rows, hole_rows
from woodlib.setting_out.plan import set_out
from woodlib.setting_out.work_lists import buy_rows, glue_rows, order_rows

CARDS = (
    parts_to_cut,
    blanks_to_cut,
    holes_to_bore,
    dowels_to_bore,
    gluing_up,
    order_of_cuts,
    the_finish,
    the_shop,
    weight_and_wood,
)
CARDS += (roundings_shown,)
NAMED = sorted(Path(__file__).with_name("named").glob("*.toml"))
INCHES = re.compile(r'"(?:(\d+)-)?(\d+(?:/\d+)?) (in|ft)"')
MILLIMETRES = re.compile(r'"([\d.]+) mm"')
IN_BRACKETS = re.compile(r"\([^()]*\)")
"""The other system stands in brackets, as it comes out."""


def in_metric(text: str) -> str:
    """The same commission in sizes that a metric shop would write: whole fives, or whole millimetres where it is thin."""

    def size(found: re.Match) -> str:
        mm = (int(found[1] or 0) + float(Fraction(found[2]))) * (304.8 if found[3] == "ft" else 25.4)
        step = 5 if mm >= 45 else 1
        return f'"{round(mm / step) * step} mm"'

    return INCHES.sub(size, text).replace('units = "inches"', 'units = "millimetres"')


def in_inches(text: str) -> str:
    """The same commission in quarters of an inch, or sixteenths where it is thin."""

    def size(found: re.Match) -> str:
        inches = Fraction(found[1]) / Fraction("25.4")
        per = 4 if inches > 3 else 16
        whole, part = divmod(Fraction(round(inches * per), per), 1)
        return f'"{whole}-{part} in"' if whole and part else f'"{whole or part} in"'

    return MILLIMETRES.sub(size, text).replace('units = "millimetres"', 'units = "inches"')


def odd_sizes(text: str, metric: bool) -> list[str]:
    """Sizes outside brackets that no rule of the system has: finer than half a millimetre, or no binary part of an inch."""
    shown = IN_BRACKETS.sub("", text)
    odd = re.findall(r"\d+/\d+ mm|(?<![\d./])\d+\.\d*[1-46-9]\d* mm|\d+\.\d\d+ mm|(?<![\d./])\d+\.\d+ in\b", shown)
    parts = re.findall(r"\d+/(\d+) in\b", shown)
    return [*odd, *(f"1/{part} in" for part in parts if 64 % int(part))] + (
        [] if metric else re.findall(r"\d+\.\d+ mm", shown)
    )


@pytest.mark.parametrize("text", ["107 49/720 mm", "9.525 mm", "101.6 mm", "0.25 mm", "3/7 in", "2.5 in"])
def test_odd_sizes_are_seen(text):
    assert odd_sizes(f"cut {text} wide", True)
    assert not odd_sizes(f"cut 4 in ({text}) or 101.5 mm wide, 3/64 in deep", True) or "in" in text


@pytest.mark.parametrize("change", [in_metric, in_inches], ids=["metric", "inches"])
@pytest.mark.parametrize("path", NAMED, ids=lambda path: path.stem)
def test_no_size_is_shown_that_no_rule_has(path, change, tmp_path):
    (tmp_path / path.name).write_text(change(path.read_text(encoding="utf-8")), encoding="utf-8")
    found = commission_of(read_brief(tmp_path / path.name))
    metric, plan = found.first == "metric", setting_out_of(found)
    other = ", inches" if metric else ", mm"
    odd = {}
    for rows in (cut_rows, hole_rows, dowel_rows, board_rows, order_rows, glue_rows, buy_rows):
        told = [text for row in rows(plan) for column, text in row.items() if not column.endswith(other)]
        odd[rows.__name__] = odd_sizes("\n".join(told), metric)
    for card in CARDS:
        odd[card.__name__] = odd_sizes(card(plan).text, metric)
    for entry in (stock_ready, cut_list, mishaps):
        odd[entry.__name__] = odd_sizes(entry(found).text, metric)
    assert {name: sizes for name, sizes in odd.items() if sizes} == {}


@pytest.mark.parametrize("name", ["lid", "shelf"])
def test_no_way_of_a_metric_piece_is_set_out_in_inches_or_in_odd_sizes(name, tmp_path):
    """Sheet and veneer are left out: their thickness is what is sold, or what is left between two veneers."""
    text = in_metric((Path(__file__).with_name("named") / f"{name}.toml").read_text(encoding="utf-8"))
    (tmp_path / "piece.toml").write_text(text, encoding="utf-8")
    brief = read_brief(tmp_path / "piece.toml")
    for verdict in commission_of(brief).verdicts:
        plan = set_out(brief, verdict=verdict)
        if any(part.role in ("sheet", "veneer") for part in plan.piece.parts):
            continue
        said = "\n".join(card(plan).text for card in CARDS)
        assert not odd_sizes(said, True), verdict.key
        assert not re.findall(r".*\d in\b(?! .*(?:the|one|all) ).*", IN_BRACKETS.sub("", said)), verdict.key
