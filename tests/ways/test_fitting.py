"""A way that does not fit its part is refused with the size at which it would: from toys to doors, nothing else is cut."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from woodlib.movement.spread import NO_DOUBTS
from woodlib.tables import rows
from woodlib.ways.fitting import unfit
from woodlib.ways.index import verdict_for
from woodlib.ways.piece import Allowances, Piece
from woodlib.ways.registry import every_way, way_of

YEAR = [6.8, 6.8, 7, 8, 8.5, 9, 9.2, 9.2, 9, 8, 7.5, 7]
TOOL_M = 0.001  # the least that is cut at all; plays and gaps may be finer


def test_every_bound_is_of_a_way_and_one_of_its_sizes():
    for row in rows("proportions.csv"):
        for key in row["ways"].split("|"):
            assert row["size"] in {"border", "border_thickness", "thickness", *way_of(key).sizes}


@settings(max_examples=40, deadline=None)
@given(
    st.sampled_from([way.key for way in every_way()]),
    st.floats(0.03, 1.2),
    st.floats(0.003, 0.06),
    st.floats(0.001, 0.2),
    st.floats(0.001, 0.06),
)
def test_what_is_advised_has_no_cut_that_nobody_can_make(key, width, thickness, border, border_thickness):
    border = min(border, 0.45 * width)
    piece = Piece("white oak", width, 2.0 * width, thickness, border, border_thickness)
    found = verdict_for(key, piece, 8.0, YEAR, doubts=NO_DOUBTS)
    if found.unfit:
        assert not found.allowed and "; it takes " in found.reason
        return
    for cut in found.cuts:
        assert cut.metres >= 0.0, (key, cut)
        if "groove" in cut.key and "stop" not in cut.key or cut.key in ("tongue_thickness", "pin"):
            assert cut.metres >= TOOL_M, (key, cut)


@pytest.mark.parametrize(
    ("key", "sizes", "says"),
    [
        # A groove 11/16 in deep in a 1/4 in stile: by the least width first, then by its share, 17.5/0.6 = 29.1 mm.
        ("frame_panel", {"border_width_m": "1/4 in"}, "it takes at least 1 in (25 mm)"),
        ("breadboard", {"border_width_m": "1 in"}, "it takes at least 1-1/2 in (38 mm)"),
        ("battens", {"thickness_m": "1/4 in", "border_thickness_m": "1/4 in"}, "it takes at least 1/2 in (12.5 mm)"),
    ],
)
def test_it_is_said_at_which_size_it_would_fit(key, sizes, says):
    usual = {"width_m": "18 in", "length_m": "30 in", "thickness_m": "3/4 in", "border_width_m": "2 in"}
    found = verdict_for(key, Piece("white oak", **(usual | sizes)), 8.0, YEAR)
    assert says in found.reason and found.risk == "does not fit"
    larger = verdict_for(key, Piece("white oak", **usual), 8.0, YEAR)
    assert not larger.unfit and not unfit(
        larger.way, Piece("white oak", **usual), {c.key: c.metres for c in (*larger.cuts, *larger.states)}
    )


def test_a_groove_is_as_wide_as_a_cutter_of_the_shop():
    # A third of 7/8 in is nearest to 5/16 in; of 22 mm, 7.33, to 7 mm. A shop with a 1/2 in cutter alone needs a frame of
    # 12.7/0.4 = 31.75 mm, 1-1/4 in.
    for system, thick, cutter in (("customary", "7/8 in", 0.0079375), ("metric", "22 mm", 0.007)):
        door = Piece("white oak", "20 in", "30 in", thick, "2-1/2 in")
        assert verdict_for("frame_panel", door, 8.0, YEAR, allowances=Allowances.of(system)).cut(
            "groove_width"
        ).metres == (pytest.approx(cutter))
    own = verdict_for("frame_panel", door, 8.0, YEAR, allowances=Allowances.of("customary", (Fraction("0.0127"),)))
    assert "it takes 1-1/4 in (32 mm)" in own.unfit
