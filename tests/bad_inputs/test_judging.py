"""Bad inputs to the ways to build: each gives one clear sentence; several at once give one each."""

import math

import pytest

from woodlib.errors import InputError, WoodlibError
from woodlib.movement.wood import Wood
from woodlib.ways.held import one_line_restraint
from woodlib.ways.index import compare, verdict_for, way_of
from woodlib.ways.piece import Allowances, Piece

SIZES = ("20 in", "44 in", "7/8 in", "2 in")
SEAT = Piece("white oak", *SIZES)
YEAR = [8.0] * 12

CASES = [
    (lambda: Piece("white oak", "-20 in", *SIZES[1:]), "panel width is '-20 in'"),
    (lambda: Piece("white oak", 20, *SIZES[1:]), "panel width is 20 m; it must be above 0 and up to 6 m"),
    (lambda: Piece("white oak", "20 in", 0, "7/8 in", "2 in"), "panel length"),
    (lambda: Piece("white oak", "20 in", "44 in", math.nan, "2 in"), "panel thickness"),
    (lambda: Piece("white oak", "20 in", "44 in", "7/8 in", "wide"), "border width is 'wide'"),
    (lambda: Piece("white oak", *SIZES, border_thickness_m="3 kg"), "border thickness is '3 kg'"),
    (lambda: Piece("white oak", *SIZES, ring_angle_deg=95), "ring angle is 95 degrees"),
    (lambda: Piece("white oak", *SIZES, ring_angle_deg=None), "ring angle is None"),
    (lambda: Piece("iron", *SIZES), "iron"),
    (lambda: Piece(7, *SIZES), "species is 7"),
    (lambda: Piece("white oak", *SIZES, border_species="plastic"), "plastic"),
    (lambda: Piece("white spruce", *SIZES), "white spruce"),
    (lambda: Allowances(pin_diameter_m=0), "pin diameter"),
    (lambda: Allowances(slot_clearance_m="2 in"), "slot clearance is 0.0508 m"),
    (lambda: Allowances(edge_cover_m="x"), "edge cover is 'x'"),
    (lambda: Allowances(outermost_share=1.5), "outermost share is 1.5"),
    (lambda: Allowances(screw_diameter_m=math.inf), "screw diameter"),
    (lambda: Allowances(button_hold_m=None), "button hold"),
    (lambda: compare(SEAT, -1, YEAR), "moisture content of the stock is -1 % MC"),
    (lambda: compare(SEAT, "dry", YEAR), "moisture content of the stock is 'dry'"),
    (lambda: compare(SEAT, 8, [8.0] * 3), "must be 12 moisture contents"),
    (lambda: compare(SEAT, 8, "damp"), "must be 12 moisture contents"),
    (lambda: compare(SEAT, 8, [8.0] * 11 + [math.nan]), "monthly moisture, number 12,"),
    (lambda: compare("seat", 8, YEAR), "piece is 'seat'; it must be of kind Piece"),
    (lambda: verdict_for("nails", SEAT, 8, YEAR), "construction is 'nails'; it must be one of battens"),
    (lambda: verdict_for(None, SEAT, 8, YEAR), "construction is None"),
    (lambda: compare(SEAT, 8, YEAR, doubts=0.1), "doubts is 0.1; it must be of kind Doubts"),
    (lambda: compare(SEAT, 8, YEAR, allowances="wide"), "allowances is 'wide'; it must be of kind Allowances"),
    (
        lambda: verdict_for("frame_panel", Piece("white oak", "20 in", "44 in", "7/8 in", "10 in"), 8, YEAR),
        "border width is 10 in (254 mm); on a piece 20 in (508 mm) wide",
    ),
    (lambda: way_of(""), "construction is ''"),
    (lambda: compare(SEAT, 8, YEAR)["dovetail"], "construction is 'dovetail'"),
    (lambda: one_line_restraint(Piece(Wood("mine", 0.001, 0.002, 0.03, 0.06), *SIZES)), "no stiffness"),
]


@pytest.mark.parametrize(("call", "fragment"), CASES, ids=[fragment for _, fragment in CASES])
def test_one_clear_sentence(call, fragment):
    with pytest.raises(WoodlibError) as caught:
        call()
    assert fragment in str(caught.value)
    assert "\n" not in str(caught.value) and str(caught.value).endswith((".", "?"))


def test_all_bad_inputs_are_reported_at_once():
    with pytest.raises(InputError) as caught:
        Piece("iron", "-1 in", "x", 0, "2 kg", ring_angle_deg=100)
    assert len(caught.value.problems) == 6
    with pytest.raises(InputError) as caught:
        compare("seat", -1, [8.0])
    assert len(caught.value.problems) == 3
