"""One hand-worked example per way to build; all arithmetic in the comments.

White ash, flatsawn, 0.00274 per point across and 0.0015/(30 - 20*0.0015) = 5.005e-5 along. Panel 500 mm wide; stock
8 %, driest month 6 % (March), dampest 12 % (August); no doubts. Narrowing 500*0.00274*2 = 2.74 mm, widening
500*0.00274*4 = 5.48 mm, swing 8.22 mm. Shop sizes: pin 9.525, screw 4.8, play 1.6, edge cover 12.7, groove cover and
button hold 6.35 mm.
"""

import pytest

from woodlib.construction.index import verdict_for
from woodlib.construction.piece import Piece
from woodlib.movement.spread import NO_DOUBTS
from woodlib.movement.wood import Wood

ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
PIECE = Piece(ASH, "500 mm", "900 mm", "20 mm", "50 mm")
MONTHS = [7, 6.5, 6, 7, 8, 9, 11, 12, 11, 10, 9, 8]


def verdict(key, months=MONTHS, piece=PIECE):
    return verdict_for(key, piece, 8, months, doubts=NO_DOUBTS)


def sizes(key):
    return {cut.name: 1000 * cut.metres for cut in verdict(key).cuts}


def test_what_every_way_says_about_the_year():
    found = verdict("battens")
    assert (found.driest_month, found.dampest_month) == ("March", "August")
    assert 1000 * found.moves.mid_m == pytest.approx(8.22, abs=1e-9)
    assert found.driest.startswith("March: the panel is narrower than today by about 3/32 in (2.5 mm)")
    assert found.dampest.startswith("August: the panel is wider than today by about 3/16 in (5 mm)")


def test_glued_border_refused():
    # March pulls 0.00548 - 2*5.005e-5 = 0.00538. Over the whole swing 0.01644 - 6*5.005e-5 = 0.01614; less the 0.005
    # after which August's push leaves a set: 0.01114. The larger counts, above 0.009: the worst step.
    found = verdict("glued_border")
    assert found.restrained_strain.mid == pytest.approx(0.01114, abs=1e-6)
    assert (found.level, found.risk, found.allowed) == (2, "cracking", False)
    assert "1.11 %" in found.reason and "0.90 %" in found.reason and found.cuts == ()


def test_glued_border_strained():
    # Stock 8 %, year 6 to 9 %: pull 0.00538; swing 0.00822 - 0.00015 - 0.005 = 0.00307. 0.00538 lies in 0.004..0.009.
    found = verdict("glued_border", [6, 7, 8, 9, 9, 9, 9, 9, 8, 8, 7, 7])
    assert found.restrained_strain.mid == pytest.approx(0.00538, abs=1e-6)
    assert (found.level, found.allowed) == (1, False)


def test_glued_border_allowed():
    # Stock 8 %, year 7 to 9 %: pull 0.00274 - 0.00005 = 0.00269, below 0.004; swing 0.00538 - 0.005 = 0.00038.
    found = verdict("glued_border", [7, 7, 8, 8, 8, 9, 9, 9, 8, 8, 8, 7])
    assert found.restrained_strain.mid == pytest.approx(0.00269, abs=1e-6)
    assert (found.level, found.allowed) == (0, True)


def test_breadboard():
    # Outer pins at 0.84*250 = 210 mm, share 0.42: travel 1.1508 in, 2.3016 out. Slot 9.525 + 1.6 + 3.4524 = 14.5774.
    # Outward 4.7625 + 0.8 + 1.1508 = 6.7133; inward 5.5625 + 2.3016 = 7.8641. Half-way pins: 11.125 + 1.7262 = 12.8512.
    # Groove stop 12.7 + 2.74/2 = 14.07. Tongue 500 - 2*12.7 - 2*1.6 - 2.74 - 5.48 = 463.18.
    found = sizes("breadboard")
    assert found["outer slots, length"] == pytest.approx(14.5774, abs=1e-6)
    assert found["outer slots, outward from the pin's centre"] == pytest.approx(6.7133, abs=1e-6)
    assert found["outer slots, inward from the pin's centre"] == pytest.approx(7.8641, abs=1e-6)
    assert found["halfway slots, length"] == pytest.approx(12.8512, abs=1e-6)
    assert found["groove stop from each end of the breadboard"] == pytest.approx(14.07, abs=1e-6)
    assert found["tongue, width across the panel"] == pytest.approx(463.18, abs=1e-6)
    # 14.5774 mm is 9.18 sixteenths: up to 5/8 in; 463.18 mm is 18 in and 3.76 sixteenths: down to 18-3/16 in.
    assert verdict("breadboard").cut("outer slots, length").text() == "5/8 in (15 mm)"
    assert verdict("breadboard").cut("tongue, width across the panel").text() == "18-3/16 in (463 mm)"


def test_frame_and_panel():
    # Wanted in March: opening 500 + 2*6.35 = 512.7. Panel today 512.7/(1 - 0.00548) = 515.5251, shrinking 2.8251.
    # In August it grows 515.5251*0.01096 = 5.6502. Groove 6.35 + 1.6 + 2.8251/2 + 5.6502/2 = 12.1876.
    found = sizes("frame_panel")
    assert found["panel, width across the grain"] == pytest.approx(515.5251, abs=1e-4)
    assert found["groove in the stiles, depth"] == pytest.approx(12.1876, abs=1e-4)
    assert found["panel, length along the grain"] == pytest.approx(912.7, abs=1e-9)
    assert found["groove in the rails, depth"] == pytest.approx(7.95, abs=1e-9)


def test_battens():
    # Outer screws, share 0.42: 4.8 + 1.6 + 1.1508 + 2.3016 = 9.8524; outward 2.4 + 0.8 + 2.3016 = 5.5016, inward 4.3508.
    # Half-way: 6.4 + 1.7262 = 8.1262. Set back 12.7 + 1.37 = 14.07.
    found = sizes("battens")
    assert found["outer slots, length"] == pytest.approx(9.8524, abs=1e-6)
    assert found["outer slots, outward from the screw's centre"] == pytest.approx(5.5016, abs=1e-6)
    assert found["outer slots, inward from the screw's centre"] == pytest.approx(4.3508, abs=1e-6)
    assert found["halfway slots, length"] == pytest.approx(8.1262, abs=1e-6)
    assert found["batten end, set back from each edge"] == pytest.approx(14.07, abs=1e-6)


def test_buttons():
    # Each edge: 1.37 in, 2.74 out. Gap 1.6 + 2.74 = 4.34. Tongue and groove 6.35 + 1.6 + 1.37 + 2.74 = 12.06.
    found = sizes("buttons")
    assert found["gap between button shoulder and rail"] == pytest.approx(4.34, abs=1e-6)
    assert found["button tongue, length"] == pytest.approx(12.06, abs=1e-6)
    assert found["groove for the buttons, depth"] == pytest.approx(12.06, abs=1e-6)
    assert found["screw slots in the cross rails, length"] == pytest.approx(9.8524, abs=1e-6)
    # The same length rounds both ways: 7.6 sixteenths, down to 7/16 for the tongue and up to 1/2 for the groove.
    texts = [verdict("buttons").cut(name).text() for name in ("button tongue, length", "groove for the buttons, depth")]
    assert texts == ["7/16 in (12 mm)", "1/2 in (13 mm)"]


def test_same_grain_border():
    # Whole width 500 + 2*50 = 600; each edge out by 600*0.00274*4/2 = 3.288; space 1.6 + 3.288 = 4.888.
    assert sizes("same_grain_border")["space to leave beside each long edge"] == pytest.approx(4.888, abs=1e-6)
    assert verdict("same_grain_border").restrained_strain.high == 0.0
