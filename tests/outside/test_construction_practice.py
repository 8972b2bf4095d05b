"""Rules of thumb of the trade, held against the ways to build: common practice, no source."""

import pytest

from woodlib.movement.spread import NO_DOUBTS
from woodlib.ways.index import verdict_for
from woodlib.ways.piece import Piece

SOURCE = "common practice, no source"
WINTER_FIT = [7, 7, 7, 8, 9, 10, 11, 11, 10, 9, 8, 7]  # fitted at the driest, as most drawers are


def test_drawer_front_fitted_in_winter_wants_an_eighth(outside):
    # An inset front about 6 in high, flatsawn red oak, fitted in the dry season: leave 1/8 in above it.
    front = Piece("northern red oak", "6 in", "18 in", "3/4 in", "2 in")
    found = verdict_for("drawer_front", front, 7, WINTER_FIT, doubts=NO_DOUBTS)
    gap = found.cut("gap_today").metres / 0.0254
    outside(SOURCE, "gap above a 6 in front fitted in winter", 1 / 8, gap, 1 / 32, "in")


@pytest.mark.parametrize(("key", "cut"), [("frame_panel", "groove_width"), ("breadboard", "tongue_thickness")])
def test_a_third_of_the_thickness(outside, key, cut):
    piece = Piece("cherry", "14 in", "20 in", "3/4 in", "2 in")
    found = verdict_for(key, piece, 8, WINTER_FIT, doubts=NO_DOUBTS).cut(cut).metres / 0.0254
    outside(SOURCE, f"{key}: {cut}, a third of 3/4 in", 1 / 4, found, 1e-9, "in")
