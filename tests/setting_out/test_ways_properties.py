"""What must hold for every way a piece is set out, whatever its size, its stock and its year."""

from collections import Counter
from fractions import Fraction
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from setting_out.briefs import MONTHS, brief_of, verdict_on

from woodlib.movement.spread import NO_DOUBTS
from woodlib.picture.scene import Words, walk
from woodlib.picture.svg import svg
from woodlib.setting_out.blank_sheet import blank_sheet
from woodlib.setting_out.boards import StockBoard
from woodlib.setting_out.joints import conflicts_of
from woodlib.setting_out.later_cuts import cuts_of
from woodlib.setting_out.lists import as_csv, cut_rows
from woodlib.setting_out.order import USUAL_PRESENT, check_order
from woodlib.setting_out.plan import set_out
from woodlib.setting_out.sheet_words import drawing_in_words
from woodlib.setting_out.sheets import sheets
from woodlib.units.exact import Rounding
from woodlib.ways.held import plane_field
from woodlib.ways.index import verdict_for
from woodlib.ways.piece import Piece
from woodlib.ways.registry import every_way

KEYS = [way.key for way in every_way()]
ROUND = ("round_tenon", "loose_ring")
few = settings(max_examples=20, deadline=None)
keys = st.sampled_from([key for key in KEYS if key not in ROUND])
years = st.lists(st.floats(5, 15), min_size=12, max_size=12)
stocks = st.floats(6, 12)
STOCK = [StockBoard("A", "180 mm", "2600 mm", "80 mm", 12)]


@st.composite
def briefs(draw):
    """Pieces in millimetres or in sixteenths of an inch, wide enough for two borders."""
    metric = draw(st.booleans())
    unit, scale = ("mm", 1) if metric else ("in", Fraction(1, 16))
    width, length = (
        draw(st.integers(*span)) for span in (((200, 900), (300, 1800)) if metric else ((128, 560), (190, 1120)))
    )
    border = draw(st.integers(30, 60) if metric else st.integers(20, 38))
    thickness = draw(st.integers(15, 40) if metric else st.integers(10, 25))
    typed = [f"{float(size * scale):g} {unit}" for size in (width, length, thickness, border)]
    return brief_of(*typed, units="millimetres" if metric else "inches")


def plan_of(brief, key, months=MONTHS, stock=8, boards=()):
    return set_out(brief, boards, verdict_on(brief, key, months, "white ash", stock=stock))


@few
@given(briefs(), keys, years, stocks)
def test_parts_and_joints_make_the_finished_size_exactly(brief, key, months, stock):
    plan = plan_of(brief, key, months, stock)
    made = plan.made
    assert made.sums and all(line.adds_up for line in made.sums)
    assert all(size >= 0 for line in made.sums for _, _, size in line.terms)
    assert all(size.exact_m > 0 and size.comes_from for part in made.parts for size in part.sizes)
    long, wide, _ = made.size_m
    for place in made.places:
        assert 0 <= place.along[0] < place.along[1] <= long and 0 <= place.across[0] < place.across[1] <= wide
    cut = wide if made.section_runs == "across" else long
    for part in made.section:
        assert 0 <= part.spread[0] < part.spread[1] <= cut and part.depth[0] < part.depth[1], part.part


@few
@given(briefs(), keys)
def test_what_is_typed_stays_exact(brief, key):
    if key in ("drawer_front", "drawer_side", "drawer_bottom", "drawer_slips", "inset_panel", *ROUND):
        return
    made = plan_of(brief, key).made
    assert made.size_m[:2] == (brief.exact_m("piece.length"), brief.exact_m("piece.width"))
    total = sum(
        (place.along[1] - place.along[0]) * (place.across[1] - place.across[0])
        for place in made.places
        if not place.below
    )
    area = made.size_m[0] * made.size_m[1]
    gaps = {"lapped_back", "tongued_back"}
    assert (
        total == area or (key in gaps and total < area) or (key in ("glued_face_rim", "raised_panel") and total > area)
    )


@few
@given(briefs(), keys, years)
def test_every_blank_holds_its_part_and_every_solid_part_is_bought(brief, key, months):
    plan = plan_of(brief, key, months)
    for entry in plan.blanks:
        blank = entry.blank
        for division, size in zip((blank.length, blank.width, blank.thickness), entry.part.sizes, strict=True):
            assert division.total_m > size.exact_m and division.pieces[0].size_m == size.exact_m
            assert all(part.size_m >= 0 for part in division.parts)
    with_blanks = {entry.part.name for entry in plan.blanks} | ({plan.made.panel.name} if plan.blank else set())
    if plan.made.own_ends_m is None:
        assert with_blanks == {part.name for part in plan.made.parts if part.solid}
    assert sum(buy.net_m3 for buy in plan.purchases) > plan.made.solid_m3 > 0
    assert plan.weight.mid_kg > 0


@few
@given(briefs(), keys, years)
def test_no_step_needs_what_is_gone(brief, key, months):
    order = plan_of(brief, key, months).order
    assert check_order(list(order.steps), USUAL_PRESENT) == ()


@few
@given(briefs(), keys)
def test_dowels_keep_clear_of_saw_cuts_and_tongues(brief, key):
    plan = plan_of(brief, key, boards=STOCK)
    for joint in plan.joints:
        if joint.places_m is not None:
            cuts = cuts_of(plan.blank.length)
            assert conflicts_of(joint.joint, joint.places_m, cuts, plan.practice.dowel_margin_m) == ()


@few
@given(briefs(), st.floats(5, 7.9), st.floats(0, 2), st.floats(0, 3))
def test_a_wider_year_only_moves_sizes_the_safe_way(brief, driest, drier, damper):
    """A drier winter asks for no narrower panel in a frame; a damper summer for none that is wider, nor a higher front."""

    def size(key, low, high, place):
        months = [low, *[8.0] * 10, high]
        return plan_of(brief, key, months).made.parts[0].sizes[place].exact_m

    usual, drier_year, damper_year = (driest, 11.0), (driest - drier, 11.0), (driest, 11.0 + damper)
    assert size("frame_panel", *drier_year, 1) >= size("frame_panel", *usual, 1)
    assert size("frame_panel", *damper_year, 1) <= size("frame_panel", *usual, 1)
    assert size("drawer_front", *damper_year, 1) <= size("drawer_front", *usual, 1)
    assert size("lapped_back", *damper_year, 1) > 0


@pytest.mark.parametrize("key", KEYS)
def test_lists_and_drawings_say_the_same_numbers(key):
    brief = (
        brief_of("500 mm", "900 mm", "20 mm", "50 mm")
        if key not in ROUND
        else brief_of("60 mm", "400 mm", "60 mm", "12 mm")
    )
    plan = plan_of(brief, key, boards=STOCK if key not in ROUND else ())
    rows = cut_rows(plan)
    assert len({tuple(row) for row in rows}) == 1 and as_csv(rows).count("\n") == len(rows) + 1
    counts = Counter()
    for row in rows:
        counts[row["piece"]] += int(row["count"])
    words = drawing_in_words(plan)
    for part in plan.made.parts:
        if plan.made.own_ends_m is None:
            assert counts[part.name] == part.count
            shown = next(row for row in rows if row["piece"] == part.name)
            assert shown["length, mm"] == Rounding(part.length.exact_m, "0.1 mm", part.length.direction).text
        assert part.text("metric") in words
    for picture in sheets(plan).values():
        ElementTree.fromstring(svg(picture, words))
        for mark in walk(picture.marks):
            if isinstance(mark, Words):
                assert mark.size >= 6.8 and 0 <= mark.y <= picture.height and 0 <= mark.x <= picture.width
            elif (points := getattr(mark, "points", None)) is not None:
                assert all(-1 <= float(y) <= picture.height + 1 for _, y in points)


@pytest.mark.parametrize("key", KEYS)
def test_each_rounding_is_shown_once(key):
    brief = brief_of("19-15/16 in", "44 in", "7/8 in", "2 in", units="millimetres")
    if key in ROUND:
        brief = brief_of("2-1/16 in", "14 in", "2-1/16 in", "1/2 in", units="millimetres")
    names = [name for name, _ in plan_of(brief, key).roundings]
    assert len(names) == len(set(names)) > 0


def test_no_drawing_of_a_blank_where_nothing_is_glued_up():
    brief = brief_of("500 mm", "900 mm", "20 mm", "50 mm")
    with pytest.raises(ValueError, match="no panel that is glued up, so there is no blank to draw"):
        blank_sheet(plan_of(brief, "lapped_back"))


@pytest.mark.parametrize("units", ["inches", "millimetres"])
def test_lists_show_a_cut_as_the_cut_list_writes_it_and_nothing_as_nothing(units):
    """A front of 19-19/32 in was once listed in sixteenths, and a veneer of 0.6 mm as 0 in."""
    brief = brief_of("20 in", "44 in", "7/8 in", "2 in", units=units)
    verdict = verdict_on(brief, "drawer_front")
    (row,) = [row for row in cut_rows(set_out(brief, (), verdict)) if row["piece"] == "drawer front"]
    assert row[f"width, {'inches' if units == 'inches' else 'mm'}"] in verdict.cut("height").text(brief.first)
    for row in cut_rows(plan_of(brief, "veneered_sheet")):
        assert not any(value in ("0 in", "0 mm") for value in row.values())
    assert not any(mark.text in ("0 in", "0 mm") for _, mark in plan_of(brief, "veneered_sheet").roundings)


@pytest.mark.parametrize("key", [key for key in KEYS if key not in ROUND])
@pytest.mark.parametrize("border_thickness", ["12 mm", "20 mm", "45 mm"])
def test_a_border_of_another_thickness(key, border_thickness):
    brief = brief_of("500 mm", "900 mm", "20 mm", "50 mm", piece__border_thickness=border_thickness)
    piece = Piece("white ash", "500 mm", "900 mm", "20 mm", "50 mm", border_thickness)
    plan = set_out(brief, (), verdict_for(key, piece, 8, MONTHS, doubts=NO_DOUBTS, held=plane_field))
    made = plan.made
    assert made.size_m[2] >= Fraction(20, 1000) and all(line.adds_up for line in made.sums)
    assert max(part.depth[1] for part in made.section) == made.size_m[2]
    for tongue in (part for part in made.section if part.part == "tongue"):
        panel = next(part for part in made.section if part.part in ("panel", "board"))
        assert panel.depth[0] <= tongue.depth[0] and tongue.depth[1] <= panel.depth[1]
    ends = [part for part in made.parts if part.name in ("end piece", "stile", "batten", "rim piece", "border strip")]
    own = Fraction(20, 1000) if key == "own_blank_rim" else metres_of(border_thickness)
    assert all(part.thickness.exact_m == own for part in ends)


def metres_of(text):
    return Fraction(text.split()[0]) / 1000
