"""What would turn the verdict on the glued border over: it holds when it is tried, and never speaks against the verdict."""

from __future__ import annotations

import re
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from woodlib.movement.months import monthly_moisture
from woodlib.movement.spread import NO_DOUBTS, USUAL_DOUBTS, Doubts
from woodlib.ways.held import full_restraint, plane_field
from woodlib.ways.index import compare, verdict_for
from woodlib.ways.piece import Piece
from woodlib.ways.turning import what_would_change

SEAT = Piece("white oak", "20 in", "44 in", "7/8 in", "2 in")
SHAPE = np.sin(2 * np.pi * (np.arange(12) - 3) / 12)
ALLOWED = "The glued border is allowed in this house"
REFUSED = ("No house", "A glued border would need a house", "It is not the house", "The doubt of the meter")


def told(piece, stock, mc, doubts=USUAL_DOUBTS, held=plane_field):
    """The verdict and what would turn it over."""
    months = monthly_moisture(list(mc))
    glued = verdict_for("glued_border", piece, stock, months, doubts=doubts, held=held)
    return glued, what_would_change(glued, piece, stock, months, doubts, held)


@settings(max_examples=25, deadline=None)
@given(
    st.sampled_from(["white oak", "black cherry", "sugar maple", "white ash", "apple"]),
    st.floats(4.0, 16.0),
    st.floats(5.0, 15.0),
    st.floats(0.0, 4.0),
    st.sampled_from([0.0, 45.0, 90.0]),
    st.sampled_from([USUAL_DOUBTS, NO_DOUBTS]),
)
def test_it_speaks_for_the_verdict_and_never_against_it(wood, stock, middle, half, ring, doubts):
    piece = Piece(wood, "500 mm", "900 mm", "22 mm", "50 mm", ring_angle_deg=ring)
    glued, said = told(piece, stock, middle + half * SHAPE, doubts)
    assert said.startswith(ALLOWED) == glued.allowed and said.startswith(REFUSED) != glued.allowed
    if glued.allowed:
        assert "No house" not in said and "Quartersawn" not in said
    assert ("No house" in said) <= (glued.reason != "" and not glued.allowed)


def test_stock_drier_than_its_house_is_to_be_rested_first():
    """In this damper house nothing pulls, but all that the stock grows is squeezed; rested to its middle it may be glued."""
    glued, said = told(SEAT, 6.0, 9.0 + 0.2 * SHAPE, NO_DOUBTS)
    assert not glued.allowed and "squeezed" in glued.reason and "No house" not in said
    assert "Stock rested to about 9.0 % MC before it is glued would be enough." in said
    assert told(SEAT, 9.0, 9.0 + 0.2 * SHAPE, NO_DOUBTS)[0].allowed


def test_neither_house_nor_stock_is_said_to_mend_a_border_that_does_not_fit():
    """A border 1/4 in wide has no face to be clamped by, so rested or quartersawn stock is not said to be enough."""
    glued, said = told(Piece("white oak", "20 in", "44 in", "7/8 in", "1/4 in"), 8.0, 8.0 + 1.0 * SHAPE)
    assert glued.unfit and "its size would" in said
    assert "would be enough" not in said and "would need a house" not in said


@pytest.mark.parametrize("held", [plane_field, full_restraint])
@pytest.mark.parametrize("half", [0.3, 2.75])
def test_the_swing_that_it_names_holds_when_it_is_tried(half, held):
    """Just inside it the border is allowed, just outside it is not."""
    mc = 8.0 + half * SHAPE
    _, said = told(SEAT, 8.0, mc, NO_DOUBTS, held)
    named = float(re.search(r"about ([0-9.]+) % MC", said)[1])

    def allowed(points):
        months = monthly_moisture(list(8.0 + points / 2.0 * SHAPE))
        return verdict_for("glued_border", SEAT, 8.0, months, doubts=NO_DOUBTS, held=held).allowed

    assert allowed(named) and not allowed(named + 0.11)


def test_a_comparison_says_the_same():
    months = monthly_moisture(list(8.0 + 2.75 * SHAPE))
    assert compare(SEAT, 8.0, months).would_change == told(SEAT, 8.0, 8.0 + 2.75 * SHAPE)[1]


def test_steady_air_without_doubts_lets_the_border_be_glued():
    assert told(SEAT, 8.0, [8.0] * 12, NO_DOUBTS)[1].startswith(ALLOWED)


def test_the_doubt_of_the_meter_is_not_said_of_the_house():
    """0.8 points of swing are borne with a meter good to 0.3 points and not with one good to 3: then the meter is named."""
    half = 0.4 * SHAPE
    known, doubtful = (
        told(SEAT, 8.0, 8.0 + half, Doubts(meter_percent=error, air_percent=0.5)) for error in (0.3, 3.0)
    )
    assert known[0].allowed and not doubtful[0].allowed
    assert doubtful[1].startswith("The doubt of the meter, 3.0 %,") and "need a house" not in doubtful[1]


def test_a_steady_house_is_not_asked_to_be_steadier():
    glued, said = told(SEAT, 6.0, 10.0 + 0.0 * SHAPE)
    assert not glued.allowed and said.startswith("It is not the house, steady within")


def test_quartersawn_stock_is_judged_as_what_it_is():
    _, said = told(SEAT, 8.0, 8.0 + 2.75 * SHAPE)
    quartered = replace(SEAT, ring_angle_deg=90.0)
    assert "Quartersawn stock" in said and not told(quartered, 8.0, 8.0 + 2.75 * SHAPE)[0].allowed
    assert "is already chosen" in told(quartered, 8.0, 8.0 + 2.75 * SHAPE)[1]
