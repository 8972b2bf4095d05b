"""Bad inputs to the further ways to build: each gives one clear sentence; several at once give one each."""

import math

import pytest

from woodlib.errors import InputError, WoodlibError
from woodlib.ways.index import compare, verdict_for
from woodlib.ways.piece import Allowances, Piece
from woodlib.ways.registry import way_of, ways_for

DOOR = Piece("cherry", "14 in", "20 in", "3/4 in", "2 in")
YEAR = [8.0] * 12

CASES = [
    (lambda: ways_for("tray table"), "kind of piece is 'tray table'; it must be one of table top"),
    (lambda: ways_for(3), "kind of piece is 3"),
    (lambda: ways_for(""), "kind of piece is ''"),
    (lambda: compare(DOOR, 8, YEAR, kind="door"), "kind of piece is 'door'; it must be one of"),
    (lambda: compare(DOOR, 8, YEAR, kind=["lid"]), "kind of piece is ['lid']"),
    (lambda: compare(DOOR, 8, YEAR, kind="back")["breadboard"], "construction is 'breadboard'; it must be one of"),
    (lambda: compare(DOOR, -2, YEAR, kind="lid"), "moisture content of the stock is -2 % MC"),
    (lambda: compare(DOOR, 8, [8.0] * 11, kind="lid"), "must be 12 moisture contents"),
    (lambda: way_of("dovetail"), "construction is 'dovetail'; it must be one of battens"),
    (lambda: way_of(None), "construction is None"),
    (lambda: verdict_for("drawer", DOOR, 8, YEAR), "construction is 'drawer'"),
    (lambda: verdict_for("drawer_front", "front", 8, YEAR), "piece is 'front'; it must be of kind Piece"),
    (lambda: verdict_for("drawer_front", DOOR, math.nan, YEAR), "moisture content of the stock is nan"),
    (lambda: verdict_for("inset_panel", DOOR, 8, YEAR, allowances=3), "allowances is 3; it must be of kind Allowances"),
    (lambda: verdict_for("inset_panel", DOOR, 8, YEAR, doubts=None), "doubts is None"),
    (lambda: Allowances(least_gap_m="0 in"), "least gap"),
    (lambda: Allowances(least_gap_m="1 in"), "least gap is 0.0254 m"),
    (lambda: Allowances(lap_cover_m=-1), "lap cover"),
    (lambda: Allowances(back_board_m="wide"), "back board is 'wide'"),
    (lambda: Allowances(plate_reach_m="2 kg"), "plate reach is '2 kg'"),
    (lambda: Allowances(plate_width_m=1.0), "plate width is 1 m"),
    (lambda: Allowances(draw_bore_offset_m="1/4 in"), "draw bore offset is 0.00635 m"),
    (lambda: Allowances(visible_gap_m=None), "visible gap"),
    (lambda: Allowances(veneer_thickness_m="1 in"), "veneer thickness is 0.0254 m"),
    (lambda: Allowances(sheet_coefficient=0.5), "sheet coefficient is 0.5 1/percent"),
    (lambda: Allowances(sheet_coefficient="low"), "sheet coefficient is 'low'"),
]


@pytest.mark.parametrize(("call", "fragment"), CASES, ids=[fragment for _, fragment in CASES])
def test_one_clear_sentence(call, fragment):
    with pytest.raises(WoodlibError) as caught:
        call()
    assert fragment in str(caught.value)
    assert "\n" not in str(caught.value) and str(caught.value).endswith((".", "?"))


def test_all_bad_sizes_are_reported_at_once():
    with pytest.raises(InputError) as caught:
        Allowances(least_gap_m=0, plate_reach_m="x", veneer_thickness_m=1, sheet_coefficient=-1)
    assert len(caught.value.problems) == 4
