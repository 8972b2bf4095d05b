"""Drawings of the ways to build can be sent as pages: one of each sort of section, frozen and replayed."""

import pytest

from woodlib.air.sorption import sorption_percent
from woodlib.handout.replay import freeze_checked
from woodlib.study.answer import Answer, Reading
from woodlib.study.inputs import Span
from woodlib.study.study import Study
from woodlib.ways.drawing import draw, measures_of, sheet_for
from woodlib.ways.held import Held
from woodlib.ways.judge import judge, numbers_of
from woodlib.ways.piece import Allowances, Piece
from woodlib.ways.registry import way_of
from woodlib.ways.travel import travel_quantities
from woodlib.words.decided import in_sight

HELD = Held(0.7)
SHELF = Piece("white oak", "16 in", "44 in", "3/4 in", "2 in")
POST = Piece("white oak", "1 in", "2 in", "1 in", "2 in")


def study_of(key):
    piece, way = POST if key == "loose_ring" else SHELF, way_of(key)

    def state(driest, dampest):
        ends = (in_sight(sorption_percent(celsius, rh)) for celsius, rh in ((20.0, driest), (24.0, dampest)))
        now = travel_quantities(piece.wood, piece.border_wood, 0.0, piece.width_m, 8.0, *ends)
        return judge(way, numbers_of(way, piece, now, Allowances(), HELD), HELD), measures_of(piece)

    sheet = sheet_for([state(20.0, 70.0)])

    def answer(driest, dampest):
        picture = draw(sheet, state(driest, dampest), way.name)
        return Answer(picture, "A drawing.", (Reading("way", way.name, ""),), "A drawing.", ())

    dry = Span("driest", "Dry air", "humidity", 20, 45, 1, 30)
    damp = Span("dampest", "Damp air", "humidity", 46, 70, 1, 60)
    return Study("a-way", "How is it built?", (dry, damp), answer)


@pytest.mark.parametrize(
    "key",
    [
        "breadboard",
        "frame_panel",
        "figure_plates",
        "drawer_bottom",
        "mitred_frame",
        "loose_ring",
        "mitred_breadboard",
        "haunched_tongue",
    ],
)
def test_a_drawing_can_be_frozen(key):
    checked = freeze_checked(study_of(key))
    assert checked.states > 0 and checked.worst_px < 1.0
