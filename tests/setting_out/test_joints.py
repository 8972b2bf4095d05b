"""Dowels and loose tongues clear of later cuts."""

from fractions import Fraction
from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st
from setting_out.lengths import lengths

from woodlib.setting_out.blank import blank_for
from woodlib.setting_out.clear_places import free_spans, nearest_places
from woodlib.setting_out.joints import Joint, conflicts_of, even_row, joint_row
from woodlib.setting_out.later_cuts import LaterCut, cuts_of
from woodlib.setting_out.practice import ShopPractice

MM = Fraction(1, 1000)


def millimetres(places):
    return [float(place / MM) for place in places]


def test_by_hand():
    # Dowels 10 mm at 50, 300, 550 on 600 mm; margin 6 mm. A kerf from 60 to 63 mm: dowel 1 ends at 55, 5 mm before it:
    # 1 mm too near. Nearest clear places: 60 - 6 - 5 = 49 or 63 + 6 + 5 = 74; 49. Mirrored, dowel 3 goes to 551.
    plan = joint_row(
        "600 mm",
        [LaterCut("kerf", "60 mm", "63 mm")],
        size="10 mm",
        margin="6 mm",
        positions=["50 mm", "300 mm", "550 mm"],
    )
    assert [(found.number, float(found.clear_m / MM)) for found in plan.conflicts] == [(1, 5.0)]
    assert millimetres(plan.places_m) == [49.0, 300.0, 551.0]
    alone = joint_row(
        "600 mm",
        [LaterCut("kerf", "60 mm", "63 mm")],
        size="10 mm",
        margin="6 mm",
        positions=["50 mm", "300 mm", "550 mm"],
        keep_mirrored=False,
    )
    assert millimetres(alone.places_m) == [49.0, 300.0, 550.0]


def test_depth_and_side_keep_clear_by_hand():
    # A recess 8 mm deep from the back of a 22 mm panel: from 14 to 22 mm from the face. A dowel 8 mm thick with its
    # middle at 7 mm ends at 11 mm: 3 mm of wood; with a margin of 3 mm that is enough, with 4 mm it is not.
    recess = LaterCut("recess", "90 mm", "130 mm", depth=("14 mm", "22 mm"))
    same = {"size": "8 mm", "depth": "7 mm", "positions": ["100 mm"], "keep_mirrored": False}
    assert joint_row("400 mm", [recess], margin="3 mm", **same).conflicts == ()
    assert joint_row("400 mm", [recess], margin="4 mm", **same).conflicts[0].clear_m == 3 * MM
    # A hole that begins 30 mm beside the glue line is clear of a dowel that reaches 25 mm into the board, by 5 mm.
    hole = LaterCut("hole", "95 mm", "105 mm", across=("30 mm", "40 mm"))
    assert joint_row("400 mm", [hole], margin="5 mm", reach="25 mm", **same).conflicts == ()
    assert joint_row("400 mm", [hole], margin="6 mm", reach="25 mm", **same).conflicts[0].clear_m == 5 * MM


def test_end_pieces_sawn_through_their_dowels():
    # Kerf between end piece and panel: trim 25 + kerf 3 + end 50 = 78 to 81 mm. A dowel at 80 mm is sawn through.
    practice = ShopPractice(saw_kerf_m="3 mm", end_trim_m="25 mm")
    blank = blank_for("900 mm", "455 mm", "20 mm", end_pieces="50 mm", rule="1 mm", practice=practice)
    length = blank.length.total_m
    plan = joint_row(length, cuts_of(blank.length), size="10 mm", margin="6 mm", positions=[80 * MM, length - 80 * MM])
    assert {found.number for found in plan.conflicts} == {1, 2}
    # To clear 81 + 6 + 5 = 92 mm it moves 12 mm; to clear 78 - 11 = 67 mm it moves 13: on by 12.
    assert millimetres(plan.places_m)[0] == 92.0
    assert plan.places_m[1] == length - plan.places_m[0]


def test_no_clear_row_is_said():
    cut = LaterCut("groove", "20 mm", "380 mm")
    plan = joint_row("400 mm", [cut], size="10 mm", margin="6 mm", positions=["100 mm", "300 mm"])
    assert plan.places_m is None and plan.shifts_m == ()
    assert "while both halves stay alike" in plan.says[-1]


def test_a_middle_dowel_that_cannot_move_and_stay_mirrored():
    cut = LaterCut("kerf", "199 mm", "201 mm")
    same = {"size": "10 mm", "margin": "6 mm", "positions": ["50 mm", "200 mm", "350 mm"]}
    assert joint_row("400 mm", [cut], **same).places_m is None
    assert joint_row("400 mm", [cut], keep_mirrored=False, **same).places_m is not None


def test_dowels_too_near_each_other_are_conflicts_too():
    plan = joint_row("400 mm", [], size="10 mm", margin="6 mm", positions=["100 mm", "115 mm"], keep_mirrored=False)
    assert plan.conflicts[0].cut == "neighbour, number 1" and plan.conflicts[0].clear_m == 5 * MM
    assert plan.places_m[1] - plan.places_m[0] == 16 * MM


joint_lengths = lengths(200, 1500)
cut_sets = st.lists(
    st.tuples(st.integers(0, 1000), st.integers(0, 60), st.none() | st.tuples(st.integers(0, 20), st.integers(0, 20))),
    max_size=5,
)


def cuts_from(length, drawn):
    made = []
    for at, wide, depth in drawn:
        low = length * at / 1000
        span = None if depth is None else (min(depth) * MM, max(depth) * MM)
        made.append(LaterCut(f"cut at {at}", low, low + wide * MM, depth=span))
    return made


@given(joint_lengths, cut_sets, lengths(3, 30), lengths(0, 15), lengths(40, 250), st.booleans())
def test_shifting_never_breaks_the_margin_and_mirrored_stays_mirrored(length, drawn, size, margin, spacing, keep):
    practice = ShopPractice(dowel_end_m="40 mm", dowel_spacing_m=spacing)
    plan = joint_row(
        length,
        cuts_from(length, drawn),
        size=size,
        margin=margin,
        keep_mirrored=keep,
        practice=practice,
        depth="15.5 mm",
    )
    wanted = plan.wanted_m
    assert all(a + b == length for a, b in zip(wanted, wanted[::-1], strict=True))
    if plan.places_m is None:
        assert plan.conflicts
        return
    assert conflicts_of(plan.joint, plan.places_m, cuts_from(length, drawn), margin) == ()
    assert len(plan.places_m) == len(wanted)
    if keep:
        assert all(a + b == length for a, b in zip(plan.places_m, plan.places_m[::-1], strict=True))
    if not plan.conflicts:
        assert plan.places_m == wanted


@given(joint_lengths, cut_sets, lengths(3, 30), lengths(0, 10), lengths(1, 10))
def test_a_wider_margin_never_has_fewer_conflicts(length, drawn, size, margin, more):
    cuts = cuts_from(length, drawn)
    joint = Joint("dowel", length, size, 25 * MM, size, 16 * MM)
    row = even_row(length, 40 * MM, 150 * MM)
    assert len(conflicts_of(joint, row, cuts, margin + more)) >= len(conflicts_of(joint, row, cuts, margin))


@given(
    st.lists(st.integers(0, 14), min_size=1, max_size=3, unique=True).map(sorted),
    st.lists(st.tuples(st.integers(-2, 14), st.integers(0, 4)), max_size=3),
    st.integers(1, 4),
)
def test_least_shifts_against_trying_everything(wanted, drawn, apart):
    forbidden = [(Fraction(low), Fraction(low + wide)) for low, wide in drawn]
    free = free_spans(Fraction(0), Fraction(14), forbidden)
    found = nearest_places([Fraction(place) for place in wanted], free, Fraction(apart))
    whole = [place for place in range(15) if any(low <= place <= high for low, high in free)]
    rows = [
        row
        for row in combinations(whole, len(wanted))
        if all(b - a >= apart for a, b in zip(row, row[1:], strict=False))
    ]
    if not rows:
        assert found is None
        return
    best = min(sum(abs(a - b) for a, b in zip(row, wanted, strict=True)) for row in rows)
    assert sum(abs(a - b) for a, b in zip(found, wanted, strict=True)) == best
    assert all(b - a >= apart for a, b in zip(found, found[1:], strict=False))


@given(lengths(100, 3000), lengths(10, 49), lengths(20, 400))
def test_even_rows_are_mirrored_and_no_wider_than_asked(length, end, spacing):
    row = even_row(length, end, spacing)
    assert all(a + b == length for a, b in zip(row, row[::-1], strict=True))
    assert all(b - a <= spacing for a, b in zip(row, row[1:], strict=False))
