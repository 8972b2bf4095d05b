"""Bad inputs to movement: each gives one clear sentence; several at once give one each."""

import math

import pytest

from woodlib.errors import InputError, WoodlibError
from woodlib.movement.board import Board
from woodlib.movement.months import monthly_moisture
from woodlib.movement.panel import Panel, PanelBoard
from woodlib.movement.spread import Doubts, width_movement
from woodlib.movement.through_year import movement_through_year

GOOD = ("white oak", "20 in", "3/4 in", "44 in")
BOARD = Board(*GOOD)

CASES = [
    (lambda: Board("white oak", "-20 in", "3/4 in", "44 in"), "board width is '-20 in'"),
    (lambda: Board("white oak", 0.0, 0.02, 1.0), "board width"),
    (lambda: Board("white oak", 0.5, math.nan, 1.0), "board thickness"),
    (lambda: Board("white oak", 0.5, 0.02, "long"), "board length is 'long'"),
    (lambda: Board("white oak", 0.5, 0.02, "20 kg"), "board length"),
    (lambda: Board("white oak", None, 0.02, 1.0), "board width"),
    (lambda: Board("unobtainium", 0.5, 0.02, 1.0), "unobtainium"),
    (lambda: Board(None, 0.5, 0.02, 1.0), "species is None"),
    (lambda: Board(*GOOD, ring_angle_deg=120), "ring angle is 120 degrees; it must be 0 to 90 degrees"),
    (lambda: Board(*GOOD, ring_angle_deg="flat"), "ring angle is 'flat'"),
    (lambda: Board(*GOOD, grain_slope_deg=-3), "slope of grain is -3 degrees"),
    (lambda: BOARD.change(-1, 8), "moisture content at the start is -1 % MC"),
    (lambda: BOARD.change(8, math.inf), "moisture content at the end"),
    (lambda: BOARD.change("dry", 8), "moisture content at the start is 'dry'"),
    (lambda: width_movement(BOARD, 8, 400), "moisture content at the end is 400 % MC"),
    (lambda: Doubts(species_share=0.9), "doubt species_share is 0.9"),
    (lambda: Doubts(meter_percent=-1), "doubt meter_percent is -1 points"),
    (lambda: Doubts(ring_angle_deg=True), "doubt ring_angle_deg is True"),
    (lambda: PanelBoard("5 in"), "neither of ring angle and pith depth"),
    (lambda: PanelBoard("5 in", ring_angle_deg=0, pith_depth_m=0.1), "both of ring angle and pith depth"),
    (lambda: PanelBoard("5 in", pith_depth_m="-2 in"), "pith depth of a panel board"),
    (lambda: PanelBoard("5 in", ring_angle_deg=91), "ring angle of a panel board is 91 degrees"),
    (lambda: Panel("white oak", []), "at least one PanelBoard"),
    (lambda: Panel("white oak", ["5 in"]), "at least one PanelBoard"),
    (lambda: Panel("white oak", 5), "at least one PanelBoard"),
    (lambda: Panel("white oak", [PanelBoard("5 in", ring_angle_deg=0)], likeness=2), "likeness of the boards is 2"),
    (lambda: monthly_moisture([8.0] * 11), "must be 12 moisture contents"),
    (lambda: monthly_moisture("damp"), "must be 12 moisture contents"),
    (lambda: monthly_moisture([8.0] * 11 + [-2.0]), "monthly moisture, number 12, is -2 % MC"),
    (lambda: movement_through_year(BOARD, -4, [8.0] * 12), "moisture content of the stock is -4 % MC"),
    (lambda: movement_through_year("oak", 8, [8.0] * 12), "board is 'oak'; it must be of kind Board"),
    (lambda: width_movement(BOARD, 8, 9, 0.15), "doubts is 0.15; it must be of kind Doubts"),
    (lambda: movement_through_year(BOARD, 8, None), "must be 12 moisture contents"),
]


@pytest.mark.parametrize(("call", "fragment"), CASES, ids=[fragment for _, fragment in CASES])
def test_one_clear_sentence(call, fragment):
    with pytest.raises(WoodlibError) as caught:
        call()
    assert fragment in str(caught.value)
    assert "\n" not in str(caught.value) and str(caught.value).endswith((".", "?"))


def test_all_bad_inputs_are_reported_at_once():
    with pytest.raises(InputError) as caught:
        Board("unobtainium", "-1 in", 0, "x", 100, 90)
    assert len(caught.value.problems) == 6
