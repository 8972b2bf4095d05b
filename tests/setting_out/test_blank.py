"""Blanks, and the grain that runs on along them."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from setting_out.lengths import INCH, lengths

from woodlib.setting_out.blank import blank_for
from woodlib.setting_out.continuity import MITRE_WIDTH, grain_run, lost_between
from woodlib.setting_out.division import WASTE
from woodlib.setting_out.kernels import blank_length
from woodlib.setting_out.practice import ShopPractice
from woodlib.units.exact import RULES

PLAIN = ShopPractice(saw_kerf_m="3 mm", end_trim_m="25 mm", edge_trim_m="6 mm", face_planing_m="0.8 mm")


def test_blank_by_hand():
    # Length: 2 trims 25 + 4 kerfs 3 + ends 50 + 50 + panel 900 = 50 + 12 + 100 + 900 = 1062 mm, a whole millimetre.
    # Width: 2 (6 + 3) + 455 = 473 mm. Thickness: 20 + 2*0.8 + 1.5 of flattening = 23.1 mm.
    blank = blank_for(
        "900 mm", "455 mm", "20 mm", end_pieces="50 mm", out_of_flat="1.5 mm", rule="1 mm", practice=PLAIN
    )
    sizes = [division.total_m * 1000 for division in (blank.length, blank.width, blank.thickness)]
    assert sizes == [1062, 473, Fraction(231, 10)]
    # The panel, number 2, begins after trim 25 + kerf 3 + end 50 + kerf 3 = 81 mm.
    assert blank.length.span(2) == (Fraction(81, 1000), Fraction(981, 1000))
    assert float(blank.finished_volume_m3) == pytest.approx(1.0 * 0.455 * 0.020)


def test_spare_by_hand():
    # 900.3 + 2*25 + 2*3 = 956.3 mm is marked 957 mm: 0.7 mm spare, 0.35 mm at each end.
    blank = blank_for("900.3 mm", "455 mm", "20 mm", rule="1 mm", practice=PLAIN)
    assert blank.roundings[0].says == "956.3 mm marked as 957 mm, 0.5 mm more"
    assert [part.size_m * 1000 for part in blank.length.parts if part.kind == "spare"] == [Fraction(35, 100)] * 2


def test_wrap_round_a_box_by_hand():
    # Four mitred sides 300, 200, 300, 200 along one blank: 1000 mm, 5 tilted kerfs of 3*99/70 = 4.242857 mm, trims 50:
    # 1071.214 mm, marked 1072 mm. Three corners run on, the fourth cannot.
    sides = [("front", "300 mm"), ("right", "200 mm"), ("back", "300 mm"), ("left", "200 mm")]
    run = grain_run(sides, corner="mitre", closes=True, rule="1 mm", practice=PLAIN)
    assert run.length_m == Fraction(1072, 1000)
    assert [corner.continues for corner in run.corners] == [True, True, True, False]
    assert run.corners[0].jump_m == Fraction(3, 1000) * MITRE_WIDTH
    assert run.corners[-1].pieces == (4, 1) and "put this corner at the back" in run.corners[-1].said()
    assert lost_between(run).startswith("12 51/70 mm")  # 3 * 4.242857 = 12.728571 = 12 and 51/70


def test_a_tilted_kerf_is_never_taken_too_narrow():
    assert 2 < MITRE_WIDTH**2 < 2 * Fraction(10002, 10000)


sizes = st.tuples(lengths(50, 2500), lengths(30, 1200), lengths(5, 60))
practices = st.builds(
    ShopPractice,
    saw_kerf_m=lengths(1, 5),
    end_trim_m=lengths(0, 100),
    edge_trim_m=lengths(0, 20),
    face_planing_m=lengths(0, 3),
)


@given(sizes, st.none() | lengths(10, 150), lengths(0, 10), st.sampled_from(list(RULES)), practices)
def test_pieces_kerfs_and_waste_make_up_the_blank_exactly(size, ends, warp, rule, practice):
    blank = blank_for(*size, end_pieces=ends, out_of_flat=warp, rule=rule, practice=practice)
    for division in (blank.length, blank.width, blank.thickness):
        pieces = sum(part.size_m for part in division.pieces)
        assert pieces + sum(division.of_kind_m(kind) for kind in WASTE) == division.total_m
        assert division.mirrored and all(part.size_m >= 0 for part in division.parts)
        *_, (_, _, end) = division.spans()
        assert end == division.total_m
    count = len(blank.length.pieces)
    assert blank.length.of_kind_m("kerf") == (count + 1) * practice.saw_kerf_m
    along = sum(part.size_m for part in blank.length.pieces)
    exact = blank_length(along, practice.saw_kerf_m, practice.end_trim_m, count)
    assert exact + blank.length.of_kind_m("spare") == blank.length.total_m
    assert all((r.marked_m / RULES[rule]).denominator == 1 and 0 <= r.error_m < RULES[rule] for r in blank.roundings)
    assert blank.finished_thickness_m == size[2] and blank.finished_width_m == size[1]


@given(sizes, lengths(1, 50))
def test_a_larger_piece_never_needs_a_smaller_blank(size, more):
    small = blank_for(*size)
    for place in range(3):
        larger = [length + (more if n == place else 0) for n, length in enumerate(size)]
        assert blank_for(*larger).volume_m3 >= small.volume_m3


@given(st.lists(lengths(20, 600), min_size=1, max_size=8), st.sampled_from(["butt", "mitre"]), practices)
def test_numbered_pieces_follow_one_another_with_one_kerf_between(pieces, corner, practice):
    run = grain_run([(f"piece {n}", length) for n, length in enumerate(pieces)], corner=corner, practice=practice)
    spans = [run.division.span(number) for number in range(1, len(pieces) + 1)]
    assert [end - begin for begin, end in spans] == pieces
    gaps = [after[0] - before[1] for before, after in zip(spans, spans[1:], strict=False)]
    assert gaps == [found.jump_m for found in run.corners]
    assert run.mark_with == tuple(f"{n} >" for n in range(1, len(pieces) + 1))


def test_customary_and_metric_kerf():
    assert blank_for("44 in", "20 in", "7/8 in").length.of_kind_m("kerf") == 2 * INCH / 8
