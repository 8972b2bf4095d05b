"""Hardware on a piece as it is built: where its holes are, which part they are in, what they come too near."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from setting_out.briefs import brief_of, verdict_on

from woodlib.brief import Hardware
from woodlib.errors import InputError
from woodlib.setting_out.hardware import strains_of
from woodlib.setting_out.hardware_overlaps import holes_of
from woodlib.setting_out.plan import set_out
from woodlib.units import metres

INCH = Fraction(254, 10_000)
SIZES = ("20 in", "44 in", "7/8 in", "2 in")


def plan_with(key, *pieces, units="inches"):
    """The seat built one way, with hardware given as (runs, centres, {more typed keys})."""
    typed, hardware = {}, []
    for number, (runs, centres, more) in enumerate(pieces, start=1):
        typed |= {f"hardware.{number}.{name}": text for name, text in ({"centres": centres} | more).items()}
        hardware.append(Hardware(f"pull {number}", metres(centres, name="centres"), runs))
    brief = brief_of(*SIZES, units=units, **typed)
    brief = replace(brief, hardware=tuple(hardware))
    return set_out(brief, (), verdict_on(brief, key))


def along(**more):
    return "along the grain", "128 mm", more


def across(**more):
    return "across the grain", "128 mm", more


def test_places_as_typed_and_the_usual_ones_where_nothing_is():
    plan = plan_with("battens", along(inset="3/4 in", middle="11 in", screw="5 mm"), along())
    first, second = plan.hardware
    assert (first.pair.middle_m, first.inset_m, first.fit.screw_m) == (11 * INCH, INCH * 3 / 4, Fraction(5, 1000))
    # What is left out: the second of two shares of 44 in is about 33 in, 1-1/2 in from the edge, screws of 4 mm.
    assert (second.pair.middle_m, second.inset_m, second.fit.screw_m) == (33 * INCH, INCH * 3 / 2, Fraction(4, 1000))
    assert first.centres_m[0] == (11 * INCH - Fraction(64, 1000), INCH * 3 / 4)


def test_holes_are_measured_on_the_whole_piece_and_know_their_part():
    plan = plan_with("frame_panel", along(inset="3/4 in"), across(inset="3/4 in"))
    front, end = plan.hardware
    assert front.part == "stile" and end.part == "rail" and front.pair.work_m == 44 * INCH
    assert front.warnings == () and end.warnings == ()


def test_slots_follow_the_grain_of_the_part():
    # A rail's own grain runs across the piece: along it the distance between two holes stays. The same hardware on a
    # panel without ends lies across the grain. On a rail it is the other way round.
    assert plan_with("frame_panel", across(inset="3/4 in")).hardware[0].slots is None
    assert plan_with("buttons", across(inset="3/4 in")).hardware[0].slots is not None
    assert plan_with("own_blank_rim", across(inset="3/4 in")).hardware[0].slots is not None
    short = ("along the grain", "20 mm", {"inset": "10 in", "middle": "1 in"})
    assert plan_with("breadboard", short).hardware[0].slots is not None
    assert plan_with("own_blank_rim", short).hardware[0].slots is None


def test_a_slot_is_as_long_as_the_year_asks():
    brief = brief_of(*SIZES)
    swelling, shrinkage = strains_of(brief)
    slots = plan_with("buttons", across(inset="3/4 in", screw="5 mm")).hardware[0].slots
    needed = 0.005 + 0.128 * (swelling - shrinkage)
    assert float(slots.lengths[0].marked_m) >= needed


NEAR = [
    # The stile's groove begins 2 in less its depth from the front; 1-1/2 in is in it.
    (
        "frame_panel",
        along(inset="1-1/2 in"),
        "holes 1 and 2 lie at the front edge of the panel, in the groove or the gap",
    ),
    ("frame_panel", along(inset="2 in"), "where parts must slide or within 1/4 in (6.4 mm) of it"),
    ("frame_panel", along(inset="3/4 in", middle="4 in"), None),
    ("frame_panel", along(inset="10 in", middle="3 in"), "one hole in the rail and one in the panel, which move apart"),
    ("same_grain_border", along(inset="2 in"), "at the front strip, on the glue line or within"),
    ("same_grain_border", along(inset="10 in"), None),
    (
        "breadboard",
        ("along the grain", "20 mm", {"inset": "10 in", "middle": "2 in"}),
        "at the left end piece, in the groove",
    ),
    ("battens", along(inset="10 in", middle="4 in"), None),
    ("battens", ("along the grain", "25 mm", {"inset": "10 in", "middle": "4 in"}), "has a hole over a batten"),
    ("buttons", along(inset="1/4 in"), "holes 1 and 2 lie less than 1/4 in (6.4 mm) from the edge of the wood"),
    ("edged_sheet", along(inset="2 in"), "at the front edging, on the glue line"),
    ("lapped_back", along(inset="4 in"), "at the gap 1, in the groove or the gap where parts must slide"),
]


@pytest.mark.parametrize(("key", "item", "fragment"), NEAR)
def test_what_its_holes_come_too_near_is_said_in_a_sentence(key, item, fragment):
    (found,) = plan_with(key, item).hardware
    if fragment is None:
        assert found.warnings == ()
    else:
        assert any(fragment in warning for warning in found.warnings), found.warnings
    assert all(warning.endswith(".") and "\n" not in warning for warning in found.warnings)


def test_the_inset_that_is_proposed_keeps_clear():
    (found,) = plan_with("frame_panel", along(inset="1-1/2 in")).hardware
    proposed = found.warnings[0].split("an inset of up to ")[1].split(" (")[0]
    assert plan_with("frame_panel", along(inset=proposed)).hardware[0].warnings == ()


def test_a_drawer_front_is_measured_from_its_lower_edge():
    from woodlib.setting_out.lists import hole_rows

    brief = brief_of("8 in", "20 in", "3/4 in", "1 in", units="inches", hardware__1__centres="128 mm")
    pull = (Hardware("pull", 0.128, "along the grain"),)
    brief = replace(brief, hardware=pull, piece=replace(brief.piece, kind="drawer front"))
    plan = set_out(brief, (), verdict_on(brief, "drawer_front"))
    assert plan.edge == "lower edge" and hole_rows(plan)[0]["from the lower edge, inches"] == "1-1/2 in"
    assert plan.hardware[0].pair.mirrored


def test_a_name_as_long_as_a_brief_allows_is_set_out_with_its_dowels():
    """The cut of such a hole, named after it, was once refused for its length."""
    from woodlib.setting_out.boards import StockBoard

    brief = brief_of(*SIZES, units="inches", hardware__1__centres="128 mm")
    brief = replace(brief, hardware=(Hardware("x" * 200, 0.128, "along the grain"),))
    boards = [StockBoard("A", "6 in", "10 ft", "1-1/8 in", 3)]
    plan = set_out(brief, boards, verdict_on(brief, "buttons"))
    assert plan.joints and plan.hardware[0].pair.name == "x" * 200


lengths = st.integers(1, 700).map(lambda number: f"{number} mm")
items = st.tuples(
    st.sampled_from(["along the grain", "across the grain"]),
    lengths,
    st.dictionaries(st.sampled_from(["inset", "middle"]), lengths).flatmap(
        lambda typed: st.integers(1, 20).map(lambda screw: typed | {"screw": f"{screw} mm"})
    ),
)


@settings(max_examples=40, deadline=None)
@given(st.lists(items, min_size=1, max_size=3))
def test_hardware_is_refused_in_sentences_or_all_its_holes_are_holes_in_the_wood(listed):
    try:
        plan = plan_with("battens", *listed)
    except InputError as error:
        assert 1 <= len(error.problems) <= len(listed)
        assert all("\n" not in sentence and " -" not in sentence for sentence in error.problems)
        return
    for item in plan.hardware:
        for hole in holes_of(item):
            for runs, size in (("along the grain", plan.made.size_m[0]), ("across the grain", plan.made.size_m[1])):
                low, high = hole.along(runs)
                assert 0 <= low < high <= size
        assert item.pair.centres_m > item.fit.drill.size_m
    told = [any("run into" in warning for warning in item.warnings) for item in plan.hardware]
    assert sum(told) != 1  # whatever runs into something is run into


def test_a_slot_reaches_as_far_as_it_is_drawn():
    (item,) = plan_with("buttons", across(inset="3/4 in", screw="5 mm")).hardware
    round_hole, slot = holes_of(item)
    bore, (length, middle) = item.fit.drill.size_m, item.slots.at(item.pair.holes_m[1])
    assert round_hole.along("across the grain") == (item.pair.holes_m[0] - bore / 2, item.pair.holes_m[0] + bore / 2)
    low, high = slot.along("across the grain")
    assert high - low == max(length.marked_m, bore) and (low + high) / 2 == item.pair.holes_m[1] + middle.marked_m
