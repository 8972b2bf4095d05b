"""The teacher's sheets: one page each, every number the kit's own, minutes that add up, a sheet for every lesson."""

from __future__ import annotations

import re
from math import pi

import pytest

from woodlib.classroom import demonstrations
from woodlib.classroom.lessons import all_lessons
from woodlib.classroom.sketch import HEIGHT, WIDTH, sketch
from woodlib.classroom.teaching import all_sheets, sheet_for, sheets_on_paper
from woodlib.data_files import data_path
from woodlib.errors import InputError
from woodlib.opening import notebooks_folder
from woodlib.picture.letters import wide
from woodlib.picture.scene import Words

SHEETS = all_sheets()
TITLES = [sheet.key for sheet in SHEETS]
LESSONS = all_lessons(notebooks_folder())


@pytest.mark.parametrize("sheet", SHEETS, ids=TITLES)
def test_a_sheet_is_whole_and_fits_one_page(sheet):
    assert sheets_on_paper([sheet]).count(b"/Type /Page /") == 1
    assert len(sheet.believe) == 3 and len(sheet.ask) == 4 and 4 <= len(sheet.demonstration) <= 6
    assert sheet.caution.endswith(".") and sheet.board.endswith((".", "?"))


@pytest.mark.parametrize("sheet", SHEETS, ids=TITLES)
def test_the_minutes_add_up(sheet):
    for whole, parts in ((45, sheet.in_45), (90, sheet.in_90)):
        assert sum(int(part.split(" ")[0]) for part in parts) == whole


@pytest.mark.parametrize("sheet", SHEETS, ids=TITLES)
def test_the_words_of_a_sketch_stay_on_it(sheet):
    for mark in sheet.picture.marks:
        if isinstance(mark, Words):
            long = 0.9 * wide(str(mark.text), mark.size)
            left = mark.x - (long / 2 if mark.anchor == "middle" else 0)
            assert left >= 0 and left + long <= WIDTH and 8 <= mark.y <= HEIGHT - 3, mark.text


def test_every_number_is_asked_for_and_every_slot_is_filled():
    asked = {
        name for path in data_path("teaching").glob("*.toml") for name in re.findall(r"\{(\w+)\}", path.read_text())
    }
    assert asked == set(demonstrations.names())
    assert not any("{" in str(sheet) for sheet in SHEETS)


def test_every_lesson_has_its_sheet():
    missing = [lesson.path.name for lesson in LESSONS if sheet_for(lesson.shown) is None]
    assert missing == [], "add a key of the lesson to goes_with of a sheet in data/teaching, or a new sheet"


def test_no_key_leads_to_two_sheets():
    keys = [key for sheet in SHEETS for key in sheet.goes_with]
    assert len(keys) == len(set(keys))


def first_mm(name: str) -> float:
    return float(re.search(r"([\d.]+) mm", demonstrations.said(name))[1])


def test_the_numbers_of_the_bench_by_hand():
    # White oak: 0.00365 and 0.00180 of the width for each point (Wood Handbook, Table 13-5), six points, 100 mm.
    assert first_mm("slices_apart") == pytest.approx(100 * 0.00365 * 6, abs=0.3)
    assert first_mm("quartersawn_apart") == pytest.approx(100 * 0.00180 * 6, abs=0.1)
    assert first_mm("panel_shrinks") == pytest.approx(500 * 0.00365 * 6, abs=0.5)
    assert first_mm("screwed_strip") == pytest.approx(250 * 0.00365 * 6, abs=0.3)
    # Green to 8 %: 22 of 30 points of 10.2 and 5.2 %; the rim of a disc of 200 mm opens by their difference.
    assert first_mm("log_opens") == pytest.approx(pi * 200 * 0.05 * 22 / 30, abs=1.0)
    # Two layers of 3 mm, one stiff along: bow = 150^2 / 8 times a curvature between 0.5 and 1.5 e / h.
    strain = 0.00365 * 6
    assert 0.5 * strain / 6 * 150**2 / 8 < first_mm("crossed_bows") < 1.5 * strain / 6 * 150**2 / 8
    assert first_mm("one_arc") > 5 * first_mm("a_ripple")
    # The same water: saturation at 0 degC is 611 Pa, at 20 degC 2339 Pa (steam tables, from memory).
    assert demonstrations.said("cold_bag") == f"{80 * 611 / 2339:.0f} % RH"


def test_a_line_that_draws_nothing_is_refused():
    for line in ("", "scribble 1 2", "area nothing 1 2 3 4", "line 1 2 3", "arrow 1 2", "circle 1", "text 1"):
        with pytest.raises(InputError, match="draws nothing"):
            sketch("A board", [line])
