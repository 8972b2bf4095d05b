"""Hand-worked examples of pieces set out as they are built; all arithmetic in the comments.

White ash, flatsawn, 0.00274 per point across the grain; 500 x 900 mm outside, 20 mm thick, border 50 mm; stock 8 %,
driest month 6 %, dampest 12 %, no doubts: narrowing strain 0.00548, widening 0.01096. The kit's usual shop sizes: kerf
3.175, end trim 25.4, edge trim 6.35, jointing 0.79375 an edge, planing 0.79375 a face; tenon 31.75 or 5/8 of the stile.
The cuts of a verdict are those of the examples in ``tests/ways/test_hand_worked.py``, as written in
millimetres: whole ones, fine sizes in halves.
"""

from fractions import Fraction

import pytest
from setting_out.briefs import brief_of, verdict_on

from woodlib.picture.scene import Circle, Window, walk
from woodlib.setting_out.blank_sheet import blank_sheet
from woodlib.setting_out.boards import StockBoard
from woodlib.setting_out.joints import conflicts_of
from woodlib.setting_out.lists import hole_rows
from woodlib.setting_out.plan import set_out
from woodlib.setting_out.plan_sheet import plan_sheet
from woodlib.setting_out.practice import ShopPractice

BRIEF = brief_of("500 mm", "900 mm", "20 mm", "50 mm")


def plan_of(key, stock=(), brief=BRIEF):
    return set_out(brief, stock, verdict_on(brief, key), practice=ShopPractice())


def mm(length) -> Fraction:
    return length * 1000


def sizes(plan):
    """Name -> (count, length, width, thickness) in mm, exact."""
    return {part.name: (part.count, *(mm(size.exact_m) for size in part.sizes)) for part in plan.made.parts}


def rough(plan):
    """Name -> length and width of its blank in mm, exact."""
    return {entry.part.name: (mm(entry.blank.length.total_m), mm(entry.blank.width.total_m)) for entry in plan.blanks}


def cubic_mm(plan):
    return plan.made.solid_m3 * 10**9


def test_frame_panel():
    # Panel 414.9741 x 812.7 mm: written 414 x 812, both down. Stiles 900. Tenon: the lesser of 31.75 and 5/8 of 50 =
    # 31.25; rails 500 - 2*50 + 2*31.25 = 462.5.
    plan = plan_of("frame_panel")
    assert sizes(plan) == {
        "panel": (1, 812, 414, 20),
        "stile": (2, 900, 50, 20),
        "rail": (2, Fraction(925, 2), 50, 20),
    }
    # Across: 50 + 414 + 50 less (414 - 400)/2 = 7 in each groove = 500. Along: 50 + 812 + 50 less 6 twice = 900.
    assert [line.says for line in plan.made.sums[:2]] == [
        "across the grain: 2 x stile 50 mm + panel 414 mm - 2 x panel in a groove 7 mm = 500 mm",
        "along the grain: 2 x rail 50 mm + panel 812 mm - 2 x panel in a groove 6 mm = 900 mm",
    ]
    # Blanks: panel 812 + 2*25.4 + 2*3.175 = 869.15 -> 870; 414 + 2*6.35 + 2*3.175 = 433.05 -> 434. Stile 957.15 -> 958,
    # rail 462.5 + 57.15 = 519.65 -> 520; width 50 + 2*0.79375 + 3.175 = 54.7625 -> 55; thickness 20 + 1.5875.
    assert (mm(plan.blank.length.total_m), mm(plan.blank.width.total_m)) == (870, 434)
    assert rough(plan) == {"stile": (958, 55), "rail": (520, 55)}
    assert mm(plan.blanks[0].blank.thickness.total_m) == Fraction("21.5875")
    # To buy, 27 mm rough: (870*434 + 2*958*55 + 2*520*55) mm2 = 377580 + 105380 + 57200 = 540160 mm2.
    (buy,) = plan.purchases
    assert buy.rough.called == "27 mm" and buy.net_m3 == Fraction(540160 * 27, 10**9)
    # Weight counts what is seen: panel between its shoulders, set back 12 (11.3611 up) and 11 (10.2241 up): 790 x 390.
    assert cubic_mm(plan) == (790 * 390 + 2 * 900 * 50 + 2 * 400 * 50) * 20


def test_breadboard():
    # Tongue 50/2 - 1.6 = 23.4: written 23, down. Panel 900 - 2*50 + 2*23 = 846; ends 500 x 50.
    plan = plan_of("breadboard", [StockBoard("A", "180 mm", "1 m", "25 mm", 3)])
    assert sizes(plan) == {"panel": (1, 846, 500, 20), "end piece": (2, 500, 50, 20)}
    assert plan.made.sums[0].says == "along the grain: 2 x end piece 50 mm + panel 846 mm - 2 x tongue 23 mm = 900 mm"
    assert cubic_mm(plan) == (800 * 500 + 2 * 500 * 50) * 20
    # Blank 846 + 57.15 = 903.15 -> 904, so 0.425 spare at each end: the panel begins at 0.425 + 25.4 + 3.175 = 29 and its
    # tongue reaches to 29 + 23 = 52. The first dowel, wanted at 50.8, is marked at 50 and needs 52 + 6.35
    # + 10/2 = 63.35; 10 is half of the 20 that the board is thick.
    assert len(plan.joints) == 2
    for joint in plan.joints:
        assert mm(joint.wanted_m[0]) == 50 and mm(joint.places_m[0]) == Fraction("63.35")
        assert mm(joint.places_m[-1]) == 904 - Fraction("63.35")
        assert any("tongue at the left end piece" in conflict.cut for conflict in joint.conflicts)
    # Strips 180 - 2*0.79375 = 178.4125; three are 535.2375, the blank 500 + 19.05 = 519.05 -> 520.
    assert mm(plan.boards.glued_m) == Fraction("535.2375") and mm(plan.boards.blank_width_m) == 520


def test_own_blank_rim():
    # 50 + 800 + 50 along, 4 kerfs of 3.175 and 2 trims of 25.4: 963.5 -> 964.
    plan = plan_of("own_blank_rim")
    # Loose tongue: the lesser of 12.7 and 50/2 into each side, written 12.5, so 25 along its grain; 500 - 2*12.7 = 474.6,
    # written 474, long; 20/3 = 6.67, written 6, thick. Slots 12.7 + 0.8 = 13.5 deep: 50 - 13.5 = 36.5 to 63.5.
    assert sizes(plan) == {"panel": (1, 800, 500, 20), "end piece": (2, 50, 500, 20), "loose tongue": (2, 25, 474, 6)}
    assert (mm(plan.made.lines[0].low_m), mm(plan.made.lines[0].high_m)) == (Fraction("36.5"), Fraction("63.5"))
    assert all(purchase.needed_m > Fraction(20, 1000) for purchase in plan.purchases)  # none is bought for the tongue
    assert mm(plan.blank.length.total_m) == 964 and plan.blanks == ()
    assert [(part.name, mm(part.size_m)) for part in plan.blank.length.pieces] == [
        ("left end", 50),
        ("panel", 800),
        ("right end", 50),
    ]
    assert plan.blank.run.mark_with == ("1 >", "2 >", "3 >")
    assert [corner.continues for corner in plan.blank.run.corners] == [True, True]
    assert cubic_mm(plan) == 900 * 500 * 20
    names = plan.order.names
    assert names.index("number the end pieces on the show face") < names.index("cut off the end pieces")


def test_battens():
    # Set back 12.7 + 2.74/2 = 14.07: written 15, up. Battens 500 - 2*15 = 470. Row: 101.6 from each end leaves 696.8, more
    # than 609.6, so two gaps: 101.6, 450, 798.4, marked 102, 450, 798.
    plan = plan_of("battens")
    assert sizes(plan) == {"panel": (1, 900, 500, 20), "batten": (3, 470, 50, 20)}
    middles = [mm(sum(place.along) / 2) for place in plan.made.places if place.below]
    assert middles == [102, 450, 798]
    assert {tuple(map(mm, place.across)) for place in plan.made.places if place.below} == {(15, 485)}
    assert mm(plan.made.size_m[2]) == 40 and cubic_mm(plan) == (900 * 500 + 3 * 470 * 50) * 20


def test_drawer_front():
    # Opening 500 high: 499.2 free, grows by 499.2*0.01096/1.01096 = 5.4120; 500 - 0.8 - 5.4120 = 493.7880: 493.5, down.
    # Length 900 - 2*0.8 = 898.4: 898, down. Gap above 6.5, 1 at each end.
    plan = plan_of("drawer_front")
    assert sizes(plan) == {"drawer front": (1, 898, Fraction(987, 2), 20)}
    assert [line.says for line in plan.made.sums] == [
        "height of the opening: front 493.5 mm + gap above 6.5 mm = 500 mm",
        "length of the opening: front 898 mm + 2 x gap at each end 1 mm = 900 mm",
    ]
    # Blank 898 + 57.15 = 955.15 -> 956; 493.5 + 19.05 = 512.55 -> 513.
    assert (mm(plan.blank.length.total_m), mm(plan.blank.width.total_m)) == (956, 513)
    assert tuple(map(mm, plan.made.size_m)) == (898, Fraction(987, 2), 20)


def test_lapped_back():
    # A board of 101.6 grows 1.1135, shrinks 0.5568. Gap 0.8 + 1.1135: 2; at the case 0.8 + 0.5568: 1.5; lap 4.8 + 0.8 +
    # 1.1135 + 0.5568 = 7.2703: 8; face written 101. (500 - 3 + 2)/(101 + 2) = 4.84: 5 boards of (500 - 3 - 8)/5 = 97.8,
    # marked 97.5; the last takes what is left, 489 - 4*97.5 = 99.
    plan = plan_of("lapped_back")
    assert sizes(plan) == {
        "board": (4, 900, Fraction("105.5"), 20),
        "last board": (1, 900, 99, 20),
    }
    assert plan.made.sums[0].says == (
        "across the grain: 4 x face of a board 97.5 mm + face of the last board 99 mm + 4 x gap 2 mm + 2 x gap at the case "
        "1.5 mm = 500 mm"
    )
    # Blanks: 105.5 + 4.7625 = 110.2625 -> 111; 99 + 4.7625 = 103.7625 -> 104; length 957.15 -> 958.
    assert rough(plan) == {"board": (958, 111), "last board": (958, 104)}
    assert plan.blank is None and plan.joints == () and cubic_mm(plan) == 489 * 900 * 20


def test_the_same_piece_in_inches():
    # 20 x 44 x 7/8 in, border 2 in. Opening 16 in = 406.4; (406.4 + 12.7)/(1 - 0.00548) = 421.409 mm = 16.5909 in:
    # written 16-9/16. In a groove (16-9/16 - 16)/2 = 9/32. Rails 16 + 2*1-1/4 = 18-1/2.
    inch = Fraction(254, 10)
    brief = brief_of("20 in", "44 in", "7/8 in", "2 in", units="inches")
    found = sizes(plan_of("frame_panel", brief=brief))
    assert found["panel"] == (1, (40 + Fraction(1, 2)) * inch, (16 + Fraction(9, 16)) * inch, inch * 7 / 8)
    assert found["rail"] == (2, (18 + Fraction(1, 2)) * inch, 2 * inch, inch * 7 / 8)


def test_a_dowel_over_a_housing_moves_aside():
    # 1100 long: battens at 102, 550, 998. The blank is 1100 + 57.15 = 1157.15 -> 1158, so the piece begins at 29 and the
    # middle housing is about 579, where the middle one of seven dowels, marked to 5 mm, would be: it has to go to one side.
    brief = brief_of("500 mm", "1100 mm", "20 mm", "50 mm")
    plan = plan_of("sliding_dovetail", [StockBoard("A", "180 mm", "1200 mm", "25 mm", 3)], brief)
    joint = plan.joints[0]
    assert len(joint.wanted_m) % 2 == 1 and joint.places_m is not None
    middle = len(joint.wanted_m) // 2
    assert mm(joint.wanted_m[middle]) == 580 and abs(mm(joint.places_m[middle]) - 579) > 25
    assert conflicts_of(joint.joint, joint.places_m, (), joint.margin_m) == ()


@pytest.mark.parametrize(
    ("key", "names"),
    [
        ("frame_panel", ("cut the joints of the frame", "plough the grooves in the frame")),
        ("frame_panel", ("cut the panel to length", "cut the tongues on the panel's edges")),
        ("breadboard", ("cut the panel to length", "cut the tongue on both ends of the panel")),
        ("lapped_back", ("cut to length", "cut laps or tongues and grooves")),
        ("frame_panel", ("crosscut the boards to rough length", "flatten one face")),
        (
            "frame_panel",
            ("put frame and panel together dry", "glue the frame around the dry panel, soft spacers in its grooves"),
        ),
        ("frame_panel", ("level the joints of the frame", "finish all faces alike, ends too")),
        (
            "breadboard",
            (
                "saw the notch at each edge of the tongues, down to their width",
                "mark the pins through the end pieces on the tongues",
            ),
        ),
    ],
)
def test_what_takes_a_face_away_comes_after_what_needs_it(key, names):
    order = plan_of(key).order.names
    assert order.index(names[0]) < order.index(names[1])


def test_pins_and_screws_of_the_way_itself():
    # Outer ones at 205.1375 mm, written 205, half-way ones at 102.5688, written 102, from the middle of 500. Pins 23.4/2 = 11.7 from the shoulder:
    # written 11.5, fine and down; the end is 50, so 38.5 from the left end. Slots 14.4975 -> the sum of its two reaches
    # as written, 6.6867 -> 7 and 7.8108 -> 8: 15; half-way 6.1246 -> 7 and 6.6867 -> 7: 14.
    pins = [pin for pin in plan_of("breadboard").made.fixings if pin.along_m < Fraction(1, 2)]
    assert [mm(pin.across_m) for pin in pins] == [45, 148, 250, 352, 455]
    assert {mm(pin.along_m) for pin in pins} == {Fraction("38.5")}
    assert [pin.slot and mm(pin.slot.exact_m) for pin in pins] == [15, 14, None, 14, 15]
    screws = plan_of("battens").made.fixings
    assert len(screws) == 15 and {mm(screw.along_m) for screw in screws} == {102, 450, 798}
    assert {mm(screw.diameter.exact_m) for screw in screws} == {Fraction("4.8")}
    rows = hole_rows(plan_of("breadboard"))
    # The bore is in the end piece, the slot in the tongue; its two reaches are the cut list's.
    assert (rows[0]["in"], rows[0]["slot in"]) == ("end piece", "tongue")
    assert rows[0]["middle of the slot"] == "from the centre 7 mm (9/32 in) outward, 8 mm (5/16 in) inward"
    assert {row["slot in"] for row in hole_rows(plan_of("battens"))} == {"", "batten"}
    assert len(rows) == 10 and rows[0]["from the front edge, mm"] == "45 mm" and len({tuple(row) for row in rows}) == 1


def test_tenons_are_set_out():
    # Stock 20: 20/3 = 6.67, the nearest cutter 6.35, written 6.5, is the tenon's too.
    # Rail 50: groove 7.95 written 8, haunch 50/4 = 12.5 marked 13 mm, so 29 wide; 31.25 long.
    (said,) = (remark for remark in plan_of("frame_panel").remarks if remark.startswith("Tenons"))
    for size in ("Tenons: 6.5 mm", "29 mm", "31.2 mm", "8 mm", "13 mm"):
        assert size in said, (size, said)


@pytest.mark.parametrize(("thick", "dowel"), [("20 mm", 10), ("19 mm", 8), ("13 mm", 6), ("12 mm", None)])
def test_a_dowel_takes_half_of_a_board_at_most(thick, dowel):
    # Sold: 5, 6, 8 and 10 mm. Half of 19 is 9.5, half of 13 is 6.5; under 12.7 a board is glued without dowels.
    brief = brief_of("500 mm", "900 mm", thick, "50 mm")
    plan = set_out(
        brief, [StockBoard("A", "180 mm", "1 m", "30 mm", 3)], verdict_on(brief, "battens"), practice=ShopPractice()
    )
    assert {mm(joint.joint.size_m) for joint in plan.joints} == ({dowel} if dowel else set())
    assert ("bore for dowels" in plan.order.names) == bool(dowel) and "glue up" in plan.order.names
    blank_sheet(plan)


def test_a_ring_has_its_steps_and_is_drawn_around_its_post():
    # Post 60. Ring: bore 60 + 2*0.8 + 60*0.01644 = 62.5864, written 63; wall 12, so 87 outside; the scale makes it 100 px.
    brief = brief_of("60 mm", "400 mm", "60 mm", "12 mm")
    plan = plan_of("loose_ring", brief=brief)
    names = plan.order.names
    assert names.index("bore the ring to its inside diameter") < names.index(
        "turn the outside of the ring about its bore, and ease its edges"
    )
    drawn = [mark for mark in walk(plan_sheet(plan).marks) if isinstance(mark, Circle) and mark.filled]
    radii = [mark.radius for mark in drawn]
    assert len(drawn) == 3 and [radius / radii[0] for radius in radii] == pytest.approx([1, 63 / 87, 60 / 87])


@pytest.mark.parametrize("key", ["edged_sheet", "veneered_sheet"])
def test_a_sheet_is_drawn_without_grain(key):
    windows = [mark for mark in plan_sheet(plan_of(key)).marks if isinstance(mark, Window)]
    assert any(not window.marks for window in windows) and any(window.marks for window in windows)
