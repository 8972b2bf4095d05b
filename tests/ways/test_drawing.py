"""Drawings of the ways to build: on their sheet, true to their numbers, and of one structure whatever the numbers."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from woodlib.picture.scene import Area, Circle, Line, Window, Words, flatten_points, walk
from woodlib.picture.wood import grain_lines
from woodlib.ways.drawing import MONTHS, draw, draw_verdict, measures_of, sheet_for, usual_scale
from woodlib.ways.drawn import Drawn, scale_for
from woodlib.ways.held import Held
from woodlib.ways.index import verdict_for
from woodlib.ways.judge import judge, numbers_of
from woodlib.ways.piece import Allowances, Piece
from woodlib.ways.registry import every_way, way_of
from woodlib.ways.travel import travel_quantities
from woodlib.words.decided import Decided, larger
from woodlib.words.say import plain_text

HELD = Held(0.7)
KEYS = [way.key for way in every_way()]
YEAR = [6, 6, 6.5, 7, 8, 9, 11, 11.5, 11, 9, 8, 7]


def piece_for(key):
    if key in ("round_tenon", "loose_ring"):
        return Piece("white oak", "1 in", "2 in", "1 in", "2 in")
    if key == "drawer_bottom":
        return Piece("white oak", "16 in", "20 in", "3/8 in", "2 in", border_thickness_m="1/2 in")
    if key.startswith("drawer"):
        return Piece("white oak", "6 in", "20 in", "3/4 in", "2 in")
    return Piece("white oak", "20 in", "44 in", "7/8 in", "2 in")


def drawn(key, stock, driest, dampest, width_share=1.0):
    """A way as a study would draw it: decided sizes, a sheet from its most restless state."""
    piece, way = piece_for(key), way_of(key)

    def state(width, start, low, high):
        travels = travel_quantities(piece.wood, piece.border_wood, 0.0, width, start, low, high)
        travels |= {"stock_mc": start, "driest_mc": low, "dampest_mc": high}
        judged = judge(way, numbers_of(way, piece, travels, Allowances(), HELD), HELD)
        return judged, measures_of(piece) | {"width": width}

    sheet = sheet_for([state(piece.width_m, 8.0, 4.0, 15.0)])
    return draw(sheet, state(piece.width_m * width_share, stock, driest, dampest), key)


def structure(picture):
    found = []
    for mark in walk(picture.marks):
        count = len(flatten_points(mark.points)) if isinstance(mark, Line | Area | Window) else 0
        role = getattr(mark, "role", "")
        found.append((type(mark).__name__, role if isinstance(role, str) else "by the risk", count))
    return found


@pytest.mark.parametrize("key", KEYS)
def test_nothing_leaves_the_sheet_and_words_carry_numbers(key):
    verdict = verdict_for(key, piece_for(key), 8, YEAR)
    for picture in [draw_verdict(verdict, piece_for(key))]:
        inside = {id(inner) for mark in picture.marks if isinstance(mark, Window) for inner in mark.marks}
        for mark in walk(picture.marks):
            if isinstance(mark, Line | Area) and id(mark) not in inside:
                xs, ys = np.reshape(np.array([float(v) for v in flatten_points(mark.points)]), (-1, 2)).T
                assert xs.min() >= -6 and xs.max() <= picture.width + 6, (key, mark)
                assert ys.min() >= 0 and ys.max() <= picture.height, (key, mark)
            if isinstance(mark, Words):
                assert mark.size >= 14 and 0 <= float(mark.y) <= picture.height
                wide = 0.62 * mark.size * len(plain_text(mark.text))
                left = float(mark.x) - {"start": 0.0, "middle": 0.5, "end": 1.0}[mark.anchor] * wide
                assert left >= 0 and left + wide <= picture.width + 1, (key, plain_text(mark.text))


@pytest.mark.parametrize("key", KEYS)
@settings(max_examples=6, deadline=None)
@given(st.floats(6, 12), st.floats(4, 8), st.floats(8.5, 15), st.floats(0.7, 1.0))
def test_structure_is_the_same_for_all_numbers(key, stock, driest, dampest, share):
    first = structure(drawn(key, 8.0, 6.0, 12.0))
    picture = drawn(key, stock, driest, dampest, share)
    assert structure(picture) == first
    for mark in walk(picture.marks):
        if isinstance(mark, Line | Area | Window):
            assert np.isfinite([float(value) for value in flatten_points(mark.points)]).all()
        if isinstance(mark, Circle):
            assert np.isfinite([float(mark.x), float(mark.y), float(mark.radius)]).all()


def section_of(verdict, piece, month):
    """The marks of the joint in one month, and the px of a metre in it."""
    state = verdict.judged, measures_of(piece)
    scale = usual_scale(*state)
    return verdict.way.joint(Drawn(*state, scale, month)), scale


def lengths_of(marks, scale):
    """All level dimension lines of the section, metres."""
    lines = [mark for mark in marks if isinstance(mark, Line) and len(mark.points) == 2 and mark.role == "ink"]
    flat = [[float(v) for v in flatten_points(line.points)] for line in lines]
    return [abs(x1 - x0) / scale.section_px for x0, y0, x1, y1 in flat if y0 == y1]


@pytest.mark.parametrize(
    ("key", "month", "size"),
    [
        ("frame_panel", "driest", "stile_groove_depth"),
        ("frame_panel", "driest", "hold_driest"),
        ("breadboard", "dampest", "tongue_length"),
        ("own_blank_rim", "driest", "end_piece_width"),
        ("sliding_dovetail", "driest", "stop_gap_driest"),
        ("sliding_dovetail", "dampest", "stop_gap_dampest"),
        ("buttons", "driest", "hold_driest"),
        ("buttons", "dampest", "hold_dampest"),
        ("figure_plates", "dampest", "end_recess_width"),
        ("drawer_front", "driest", "gap_driest"),
        ("drawer_side", "dampest", "gap_dampest"),
        ("inset_panel", "driest", "gap_driest"),
        ("lapped_back", "driest", "gap_driest"),
        ("tongued_back", "dampest", "gap_dampest"),
        ("same_grain_border", "driest", "space_driest"),
        ("mitred_frame", "dampest", "mitre_dampest"),
        ("glued_face_rim", "driest", "bow_driest"),
    ],
)
def test_section_is_true_to_its_numbers(key, month, size):
    piece = piece_for(key)
    verdict = verdict_for(key, piece, 8, YEAR)
    wanted = verdict.cut(size).metres
    found = lengths_of(*section_of(verdict, piece, month))
    assert any(length == pytest.approx(wanted, abs=2e-5) for length in found), (wanted, found)


@pytest.mark.parametrize("key", ["breadboard", "battens", "slotted_blocks", "drawer_bottom"])
def test_pin_stays_inside_its_slot_in_every_month(key):
    piece = piece_for(key)
    verdict = verdict_for(key, piece, 8, YEAR)
    pin = verdict.quantities.get("pin", verdict.quantities.get("screw"))
    for month in MONTHS:
        marks, scale = section_of(verdict, piece, month)
        gaps = [m for m in marks if isinstance(m, Area) and m.role == "gap"]
        xs = [float(v) for v in flatten_points(gaps[-1].points)[::2]]
        if key == "drawer_bottom":  # the screw is seen from the side
            screw = next(m for m in marks if isinstance(m, Area) and m.role == "metal")
            middle = float(np.mean([float(v) for v in flatten_points(screw.points)[::2]]))
        else:
            middle = [float(m.x) for m in marks if isinstance(m, Circle) and m.role == "metal"][-1]
        half = 0.5 * pin * scale.section_px
        assert min(xs) - 0.1 <= middle - half and middle + half <= max(xs) + 0.1, (key, month)


def test_scale_stays_within_the_sheet():
    assert scale_for(0.5, 0.02, 0.1).times == 10
    assert scale_for(0.5, 0.2, 0.1).times == 1
    assert scale_for(1.0, 0.01, 0.1).plan_px < scale_for(0.5, 0.01, 0.1).plan_px


def test_grain_lines_keep_the_record_of_decided_edges():
    edge = larger(100.0, 60.0)
    for along in ("x", "y"):
        lines = grain_lines([(0.0, 0.0), (edge, 0.0), (edge, edge), (0.0, edge)], along, 2, 1)
        plain = grain_lines([(0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0)], along, 2, 1)
        for decided, other in zip(lines, plain, strict=True):
            values = flatten_points(decided.points)
            assert any(isinstance(value, Decided) for value in values)
            assert np.allclose([float(v) for v in values], flatten_points(other.points))


def tallest(d, role):
    """Height of the tallest wood of a role in the view from above, px."""
    found = [mark for mark in walk(d.way.plan(d)) if isinstance(mark, Area) and mark.role == role]
    return max((np.ptp([float(y) for y in flatten_points(mark.points)[1::2]]) for mark in found), default=0.0)


@pytest.mark.parametrize("key", [way.key for way in every_way() if not (way.round or way.boarded or way.still_outside)])
def test_wood_that_is_free_is_drawn_wider_in_the_dampest_month_by_its_whole_movement(key):
    piece, way = piece_for(key), way_of(key)
    travels = travel_quantities(piece.wood, piece.border_wood, 0.0, piece.width_m, 8.0, 6.0, 12.0)
    state = (
        judge(way, numbers_of(way, piece, travels, Allowances(), HELD), HELD),
        measures_of(piece) | {"width": piece.width_m},
    )
    scale = usual_scale(*state)
    dry, damp = (Drawn(*state, scale, month) for month in MONTHS)
    grown = tallest(damp, "wood") - tallest(dry, "wood")
    if key == "same_grain_border":  # its border grows with the panel
        grown += 2 * (tallest(damp, "border-wood") - tallest(dry, "border-wood"))
    whole = float(travels["narrowing_mid"] + travels["widening_mid"]) * scale.plan_px * scale.times
    opening = {"drawer_front", "drawer_side", "drawer_slips", "drawer_bottom"}
    if key in opening:  # cut smaller than its opening by its play
        assert 0.9 * whole < grown <= whole + 1e-9
    elif way.framed:
        assert grown == pytest.approx(0.0, abs=1e-9)
    elif way.holds:
        assert 0.0 < grown < whole
    else:
        assert grown == pytest.approx(whole, rel=1e-9)
