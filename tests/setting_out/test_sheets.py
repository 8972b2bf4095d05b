"""The shop's sheets: true to scale on both papers, chains that close, bars that measure what they say."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path

import pytest

from woodlib.brief import read_brief
from woodlib.commission import chosen_brief, commission_of
from woodlib.errors import InputError
from woodlib.picture.pdf import sheets_pdf
from woodlib.picture.scene import Area, Line, Words, walk
from woodlib.picture.svg import svg
from woodlib.setting_out.joint_sheet import _window
from woodlib.setting_out.plan import set_out
from woodlib.setting_out.section_drawing import grooves, rooms
from woodlib.setting_out.sheet import Sheet, scale_in
from woodlib.setting_out.sheets import sheets

OF = commission_of(chosen_brief(), "breadboard")
PLAN = set_out(OF.brief, verdict=OF.built)
PX_IN = 96


@pytest.mark.parametrize(("paper", "mm"), [("A4", (297, 210)), ("Letter", (279.4, 215.9))])
def test_a_sheet_has_the_size_of_its_paper(paper, mm):
    drawn = tuple(sheets(PLAN, paper).values())
    pdf = sheets_pdf(drawn)
    assert pdf == sheets_pdf(drawn) and f"/Count {len(drawn)} ".encode() in pdf
    boxes = re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", pdf)
    assert len(boxes) == len(drawn)
    for wide, tall in boxes:
        assert (float(wide) / 72 * 25.4, float(tall) / 72 * 25.4) == pytest.approx(mm, abs=0.01)
    head = svg(drawn[0], "words", true_size=True)[:400]
    assert f'width="{mm[0]:.2f}mm" height="{mm[1]:.2f}mm"' in head


def test_the_cross_table_of_a_pdf_leads_to_its_objects():
    pdf = sheets_pdf(tuple(sheets(PLAN, "A4").values()))
    start = int(pdf.rsplit(b"startxref\n", 1)[1].split()[0])
    rows = re.findall(rb"(\d{10}) 00000 n", pdf[start:])
    assert pdf[start:].startswith(b"xref") and rows
    for number, row in enumerate(rows, start=1):
        assert pdf[int(row) :].startswith(f"{number} 0 obj".encode())


def test_letters_that_the_plain_typefaces_lack_are_still_printed():
    sheet = Sheet("\u039a\u03b1\u03c0\u03ac\u03ba\u03b9")
    sheet.text(100, 100, "\u039a\u03b1\u03c0\u03ac\u03ba\u03b9")
    assert sheets_pdf((sheet.finish(()),)).startswith(b"%PDF-")


def test_the_plan_is_drawn_to_its_scale():
    # The seat is 44 in long and 20 in wide; at 1:8 that is 5-1/2 by 2-1/2 in on paper.
    panel = next(mark for mark in walk(sheets(PLAN, "Letter")["piece"].marks) if isinstance(mark, Area))
    ends = [mark for mark in walk(sheets(PLAN, "Letter")["piece"].marks) if isinstance(mark, Area)][:3]
    xs = [x for mark in ends for x, _ in mark.points]
    ys = [y for _, y in panel.points]
    assert (max(xs) - min(xs)) / PX_IN == pytest.approx(5.5) and (max(ys) - min(ys)) / PX_IN == pytest.approx(2.5)


def test_check_bars_measure_what_they_say():
    stick = sheets(PLAN, "A4")["stick-1"]
    bars = [mark for mark in walk(stick.marks) if isinstance(mark, Line) and len(mark.points) == 2][:8]
    lengths = {round(abs(mark.points[1][0] - mark.points[0][0]) / PX_IN * 25.4, 3) for mark in bars}
    assert {100.0, 76.2} <= lengths
    said = [mark.text for mark in walk(stick.marks) if isinstance(mark, Words)]
    assert "measure first: 100 mm" in said and "measure first: 3 in" in said


def test_a_groove_deeper_than_its_tongue_shows_its_room():
    # Groove 1 in deep, tongue 7/8 in long, in ends 2 in wide: 1/8 in of room at both ends.
    found = [span[1] - span[0] for _, span, _ in rooms(PLAN.made)]
    assert found == [Fraction(254, 10_000) / 8] * 2
    said = [mark.text for mark in walk(sheets(PLAN, "A4")["joint"].marks) if isinstance(mark, Words)]
    assert "room 1/8 in" in said and {"1 in", "7/8 in"} <= set(said)


def test_what_fits_no_sheet_is_said():
    with pytest.raises(InputError, match="does not fit a sheet at 1:50; draw it in parts"):
        scale_in("metric", 19.0, 900, 1)
    with pytest.raises(InputError, match="choose one of A4, Letter"):
        sheets(PLAN, "A7")


def test_a_groove_is_drawn_wider_than_its_tongue():
    # The seat's frame: cutter 5/16 in; the tongue is marked 9/32, so 1/32 of play is drawn, half on each side.
    of = commission_of(chosen_brief(), "frame_panel")
    plan = set_out(of.brief, verdict=of.built)
    tongue = next(part for part in plan.piece.section if part.part == "tongue")
    (_, first), (_, last) = grooves(plan.piece)
    inch = Fraction(254, 10_000)
    assert first == last and first[1] - first[0] == inch * 5 / 16 and tongue.depth[1] - tongue.depth[0] == inch * 9 / 32
    said = [mark.text for mark in walk(sheets(plan)["joint"].marks) if isinstance(mark, Words)]
    assert {"groove 5/16 in", "room 1/4 in"} <= set(said) and said.count("1/4 in") >= 2


def test_the_blank_shows_its_pieces_waste_and_dowels():
    drawn = sheets(PLAN)["blank"]
    said = {mark.text for mark in walk(drawn.marks) if isinstance(mark, Words)}
    assert {"1", PLAN.glued_blank.text(PLAN.first) + "; front edge below"} <= said
    dowels = [mark for mark in walk(drawn.marks) if isinstance(mark, Line) and mark.role == "ink" and mark.width >= 2]
    assert len(dowels) == sum(len(joint.wanted_m) for joint in PLAN.joints)
    for mark in walk(drawn.marks):
        for x, y in getattr(mark, "points", ()):
            assert -1 <= x <= drawn.width + 1 and -1 <= y <= drawn.height + 1


def test_a_raised_panel_shows_its_bevel_whole(tmp_path):
    """Enlarged too far, the joint once ended within the bevel, and the panel looked flush."""
    door = (Path(__file__).parents[1] / "commissions/named/door.toml").read_text(encoding="utf-8")
    brief = tmp_path / "door.toml"
    brief.write_text(door.replace('rings = "quartersawn"', 'rings = "quartersawn"\npanel = "raised"'), encoding="utf-8")
    of = commission_of(read_brief(brief))
    plan = set_out(of.brief, verdict=of.built)
    low, high = _window(plan.piece, False)
    wedges = [wedge for part in plan.piece.section for wedge in part.cut_off()]
    assert any(low <= min(wedge)[0] and max(wedge)[0] <= high for wedge in wedges)
    said = " ".join(
        mark.text for sheet in sheets(plan).values() for mark in walk(sheet.marks) if isinstance(mark, Words)
    )
    assert "panel's bevel begins" in said and "panel's shoulder" not in said
