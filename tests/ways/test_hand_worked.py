"""One hand-worked example per way to build; all arithmetic in the comments.

White ash, flatsawn, 0.00274 per point across and 0.0015/(30 - 20*0.0015) = 5.005e-5 along. Piece 500 mm wide; stock
8 %, driest month 6 % (March), dampest 12 % (August); no doubts. Sizes are of the whole piece, border included. Narrowing 500*0.00274*2 = 2.74 mm, widening
500*0.00274*4 = 5.48 mm, swing 8.22 mm. Shop sizes: pin 9.525, screw 4.8, play 1.6, edge cover 12.7, groove cover and
button hold 6.35 mm.
"""

import pytest

from woodlib.movement.spread import NO_DOUBTS
from woodlib.movement.wood import Wood
from woodlib.ways.index import verdict_for
from woodlib.ways.piece import Piece

ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
PIECE = Piece(ASH, "500 mm", "900 mm", "20 mm", "50 mm")
MONTHS = [7, 6.5, 6, 7, 8, 9, 11, 12, 11, 10, 9, 8]


def verdict(key, months=MONTHS, piece=PIECE):
    return verdict_for(key, piece, 8, months, doubts=NO_DOUBTS)


def sizes(key):
    return {cut.key: 1000 * cut.metres for cut in verdict(key).cuts}


def test_what_every_way_says_about_the_year():
    found = verdict("battens")
    assert (found.driest_month, found.dampest_month) == ("March", "August")
    assert 1000 * found.moves.mid_m == pytest.approx(8.22, abs=1e-9)
    assert found.driest.startswith("March: the panel is narrower than today by about 3/32 in (2.5 mm)")
    assert found.dampest.startswith("August: the panel is wider than today by about 3/16 in (5 mm)")


def test_glued_border_refused():
    # From 12 to 6 %: 0.01644 - 6*5.005e-5 = 0.01614. August's push from 8 to 12 % is taken back first: m = 0.47434, e^(-4m)
    # = 0.14996, ln(2 - 0.14996)/m = 1.29698 points, so (6 - 1.29698)/6 = 0.78384 of it is gathered: 0.012651. In a
    # settled year tanh(3m) = 0.8902, ln(1.8902)/m = 1.34225: 0.77629, a little less. Above 0.009: the worst step.
    found = verdict("glued_border")
    assert found.restrained_strain.mid == pytest.approx(0.012651, abs=1e-6)
    assert (found.level, found.risk, found.allowed) == (2, "cracking", False)
    assert "1.27 %" in found.reason and "0.90 %" in found.reason and found.cuts == ()


def test_glued_border_strained():
    # Stock 8 %, year 6 to 9 %: 0.00822 - 0.00015 = 0.00807; ln(2 - e^-m)/m = 0.67549 of 3 points: 0.77484 of it, 0.006253.
    found = verdict("glued_border", [6, 7, 8, 9, 9, 9, 9, 9, 8, 8, 7, 7])
    assert found.restrained_strain.mid == pytest.approx(0.006253, abs=1e-6)
    assert (found.level, found.allowed) == (1, False)


def test_glued_border_allowed():
    # Stock 8 %, year 7 to 9 %: 0.00548 - 0.0001 = 0.00538; 0.67549 of 2 points are taken back: 0.66226 of it, 0.003563.
    found = verdict("glued_border", [7, 7, 8, 8, 8, 9, 9, 9, 8, 8, 8, 7])
    assert found.restrained_strain.mid == pytest.approx(0.003563, abs=1e-6)
    assert (found.level, found.allowed) == (0, True)


def test_breadboard():
    # Outer pins at 250*(1 - 0.06) - 12.7 - 1.5*1.6 - 10 - 9.525/2 = 205.1375 mm, share 0.410275: travel 1.1242 in, 2.2483
    # out. Slot 9.525 + 1.6 + 3.3725 = 14.4975. Outward 4.7625 + 0.8 + 1.1242 = 6.6867; inward 5.5625 + 2.2483 = 7.8108.
    # Half-way pins: 11.125 + 1.6862 = 12.8112.
    # Groove stop 12.7 + 2.74/2 = 14.07. Tongue 500 - 2*12.7 - 2*1.6 - 2.74 - 5.48 = 463.18.
    found = sizes("breadboard")
    assert found["outer_slot"] == pytest.approx(14.497461, abs=1e-6)
    assert found["outer_slot_outward"] == pytest.approx(6.686654, abs=1e-6)
    assert found["outer_slot_inward"] == pytest.approx(7.810807, abs=1e-6)
    assert found["halfway_slot"] == pytest.approx(12.811230, abs=1e-6)
    assert found["groove_stop"] == pytest.approx(14.07, abs=1e-6)
    assert found["tongue_width"] == pytest.approx(463.18, abs=1e-6)
    # 14.4975 mm is 9.13 sixteenths: up to 5/8 in; 463.18 mm is 18 in and 3.76 sixteenths: down to 18-3/16 in.
    assert verdict("breadboard").cut("outer_slot").text() == "5/8 in (16 mm)"
    assert verdict("breadboard").cut("tongue_width").text() == "18-3/16 in (462 mm)"


def test_frame_and_panel():
    # Opening 500 - 2*50 = 400; wanted in March 400 + 2*6.35 = 412.7. Panel today 412.7/(1 - 0.00548) = 414.9741,
    # shrinking 2.2741. In August it grows 414.9741*0.01096 = 4.5481. Groove 6.35 + 1.6 + 1.1370 + 2.2741 = 11.3611.
    # Along the grain 900 - 2*50 + 2*6.35 = 812.7.
    found = sizes("frame_panel")
    assert found["panel_width"] == pytest.approx(414.9741, abs=1e-4)
    assert found["stile_groove_depth"] == pytest.approx(11.3611, abs=1e-4)
    assert found["panel_length"] == pytest.approx(812.7, abs=1e-9)
    assert found["rail_groove_depth"] == pytest.approx(7.95, abs=1e-9)
    # Line today 1.6 + 2.2741 = 3.8741. Shoulders: long edges as deep as the groove, 11.3611; ends 6.35 + 3.8741 = 10.2241;
    # over the year it changes by 1.1370 + 2.2741 = 3.4111, in March it is 3.8741 + 1.1370 = 5.0111.
    assert found["edge_shoulder"] == pytest.approx(11.3611, abs=1e-4)
    assert found["end_shoulder"] == pytest.approx(10.2241, abs=1e-4)
    assert found["line_today"] == pytest.approx(3.8741, abs=1e-4)
    state = {cut.key: 1000 * cut.metres for cut in verdict("frame_panel").states}
    assert state["line_change"] == pytest.approx(3.4111, abs=1e-4)
    assert state["line_driest"] == pytest.approx(5.0111, abs=1e-4)


def test_a_frame_moves_by_its_stiles():
    # Two stiles of 50: 100*0.01096 = 1.096 wider in August, 100*0.00548 = 0.548 narrower in March; space 1.6 + 1.096.
    found = verdict("frame_panel")
    state = {cut.key: 1000 * cut.metres for cut in found.states}
    assert state["frame_wider"] == pytest.approx(1.096, abs=1e-9)
    assert state["frame_narrower"] == pytest.approx(0.548, abs=1e-9)
    assert 1000 * found.cut("space_beside").metres == pytest.approx(2.696, abs=1e-9)
    # What moves in it is the panel: 412.7/500 of the whole width's 8.22.
    assert 1000 * found.moves.mid_m == pytest.approx(6.7848, abs=1e-4)


def test_a_slot_is_as_long_as_its_two_reaches_as_they_are_written():
    # 6.6867 and 7.8108 mm: 4.21 and 4.92 sixteenths, so 5/16 each, 5/8 together; a metric shop 7 and 8 mm, 15 together.
    # The bracket says what is marked: 5/16 in is 7.94 mm, 5/8 in 15.88.
    found = verdict("breadboard")
    texts = [found.cut(f"outer_slot{name}").text() for name in ("_outward", "_inward", "")]
    assert texts == ["5/16 in (8 mm)", "5/16 in (8 mm)", "5/8 in (16 mm)"]
    texts = [found.cut(f"outer_slot{name}").text("metric") for name in ("_outward", "_inward", "")]
    assert texts == ["7 mm (9/32 in)", "8 mm (5/16 in)", "15 mm (19/32 in)"]
    # Battens 5.4917 and 4.3459: 4/16 and 3/16, 6 and 5 mm. The length alone, 9.8376, would have been written 10 mm.
    assert verdict("battens").cut("outer_slot").text() == "7/16 in (11 mm)"


def test_a_pin_is_no_thicker_than_its_end_allows():
    # End 30 wide, stock 19: pin the least of 9.525, 30/5 = 6 and 19/2 = 9.5. Tongue 15 - 1.6 = 13.4, pins at its middle
    # 7.5 - 0.8 = 6.7, so 3.7 of wood on both sides. Thickness 19/3 = 6.333: 7/32 in (5.56 mm).
    found = verdict("breadboard", piece=Piece(ASH, "280 mm", "450 mm", "19 mm", "30 mm"))
    assert 1000 * found.cut("pin").metres == pytest.approx(6.0, abs=1e-9)
    assert 1000 * found.cut("pin_from_shoulder").metres == pytest.approx(6.7, abs=1e-9)
    assert found.cut("tongue_thickness").text() == "7/32 in (5.5 mm)"
    slim = verdict("breadboard", piece=Piece(ASH, "280 mm", "450 mm", "19 mm", "12 mm"))
    assert any("too slim for a pin" in remark for remark in slim.remarks)
    assert not any("too slim" in remark for remark in found.remarks)


def test_a_slot_does_not_break_out_of_the_tongue_of_a_small_board():
    # 280 wide, pin 6 (a fifth of the end). Outer pins at 140*0.94 - 12.7 - 2.4 - 10 - 3 = 103.5 mm, share 0.369643.
    # Narrowing 280*0.00548 = 1.5344, widening 3.0688. Outward 3 + 0.8 + 0.369643*1.5344 = 4.3672; it ends at 107.8672.
    # Tongue 280 - 25.4 - 3.2 - 1.5344 - 3.0688 = 246.7968, half 123.3984: 15.5312 of wood, more than 10.
    found = verdict("breadboard", piece=Piece(ASH, "280 mm", "450 mm", "19 mm", "30 mm"))
    out, half = found.quantities["outer_distance"], found.cut("tongue_width").metres / 2
    assert 1000 * out == pytest.approx(103.5, abs=1e-9)
    wall = half - out - found.cut("outer_slot_outward").metres
    assert 1000 * wall == pytest.approx(15.5312, abs=1e-3)
    assert not any("least wall" in remark or "crowd" in remark for remark in found.remarks)
    # 100 wide, end 30: pin 6; 50*0.94 - 28.1 = 18.9, half of it 9.45, less than three pins.
    narrow = verdict("breadboard", piece=Piece(ASH, "100 mm", "450 mm", "19 mm", "30 mm"))
    assert any("half-way pins would crowd" in remark for remark in narrow.remarks)


def test_a_wall_that_a_wild_house_eats_is_told():
    # From 8 % to 0 % and 28 %: narrowing 8*0.00274 = 0.0219 of the width, widening 20*0.00274 = 0.0548. The tongue loses
    # 2*(0.0110 + 0.0274) of it and the slot reaches 0.0110*share further: 0.0219 + 0.0548 + 0.018 = 0.095 of half, over 0.06.
    wild = verdict("breadboard", [0, 0, 5, 10, 15, 28, 28, 28, 20, 10, 5, 0])
    assert any("the ends of the tongue than the shop's least wall" in remark for remark in wild.remarks)
    assert any("the ends of the battens than" in remark for remark in verdict("battens", [0, 8, 28] * 4).remarks)


def test_battens():
    # Outer screws at 250*0.94 - 12.7 - 10 - 2.4 - 0.8 = 209.1 mm, share 0.4182: 4.8 + 1.6 + 1.1459 + 2.2917 = 9.8376;
    # outward 2.4 + 0.8 + 2.2917 = 5.4917, inward 4.3459. Half-way: 6.4 + 1.7188 = 8.1188. Set back 12.7 + 1.37 = 14.07.
    found = sizes("battens")
    assert found["outer_slot"] == pytest.approx(9.837604, abs=1e-6)
    assert found["outer_slot_outward"] == pytest.approx(5.491736, abs=1e-6)
    assert found["outer_slot_inward"] == pytest.approx(4.345868, abs=1e-6)
    assert found["halfway_slot"] == pytest.approx(8.118802, abs=1e-6)
    assert found["set_back"] == pytest.approx(14.07, abs=1e-6)


def test_buttons():
    # Each edge: 1.37 in, 2.74 out. Gap 1.6 + 2.74 = 4.34. Tongue and groove 6.35 + 1.6 + 1.37 + 2.74 = 12.06.
    found = sizes("buttons")
    assert found["shoulder_gap"] == pytest.approx(4.34, abs=1e-6)
    assert found["tongue_length"] == pytest.approx(12.06, abs=1e-6)
    assert found["groove_depth"] == pytest.approx(12.06, abs=1e-6)
    assert found["cross_rail_slot"] == pytest.approx(9.8524, abs=1e-6)
    # The gap is marked 3/16 in: 4.7625 + 6.35 + 1.37 = 12.4825 of tongue, 15.73 thirty-seconds, up to 1/2 in. The groove,
    # 7.6 sixteenths, is up to 1/2 in too; the tongue is 12.7 - 4.7625 = 7.9375 deep in it, in August 10.6775.
    texts = [verdict("buttons").cut(name).text() for name in ("tongue_length", "groove_depth")]
    assert texts == ["1/2 in (12.5 mm)", "1/2 in (12.5 mm)"]
    assert verdict("buttons").cut("hold_dampest").text() == "13/32 in (10.5 mm)"


def test_same_grain_border():
    # Whole width 500, border included; each edge out by 500*0.00274*4/2 = 2.74; space 1.6 + 2.74 = 4.34.
    assert sizes("same_grain_border")["space_beside"] == pytest.approx(4.34, abs=1e-6)
    assert verdict("same_grain_border").restrained_strain.high == 0.0
