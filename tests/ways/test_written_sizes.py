"""Sizes as they are written: a thin one never as nothing, and what leaves the shop exactly."""

from fractions import Fraction

from woodlib.movement.wood import Wood
from woodlib.ways.index import verdict_for
from woodlib.ways.piece import Piece
from woodlib.ways.rules import Cut

OAK = Wood("white oak", 0.00180, 0.00365, 0.052, 0.102)
INCH = Fraction(254, 10_000)


def test_a_veneer_is_not_written_as_nothing():
    """0.6 mm is 1.5 sixty-fourths of an inch: down to 1/64 in, and to 0.6 mm; it was once "0 in (0.5 mm)"."""
    piece = Piece("white oak", "20 in", "44 in", "7/8 in", "2 in")
    veneer = verdict_for("veneered_sheet", piece, 8, [8.0] * 12).cut("veneer_thickness")
    assert veneer.text() == "1/64 in (0.6 mm)" and veneer.text("metric") == "0.6 mm (1/64 in)"
    assert Cut("hair", "hair", 0.0003, "down", "", fine=True).text() == "under 1/64 in (0.3 mm)"


def test_a_size_as_written_is_exact():
    # 16.7 in rounded down to 1/16 in is 16-11/16; 424.18 mm down to 424.
    panel = Cut("panel", "panel", 16.7 * 0.0254, "down", "")
    assert panel.written_m() == (16 + Fraction(11, 16)) * INCH and panel.written_m("metric") == Fraction(424, 1000)
    halves = Cut("a", "a", 0.0071, "up", ""), Cut("b", "b", 0.0071, "up", "")
    whole = Cut("whole", "whole", 0.0142, "up", "", chain=tuple((1, half) for half in halves))
    assert whole.written_m("metric") == 2 * halves[0].written_m("metric") == Fraction(16, 1000)
