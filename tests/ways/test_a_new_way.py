"""A way that only this test knows goes everywhere without any other change: the promise of one file per way."""

from __future__ import annotations

import pytest

from woodlib.brief import read_brief
from woodlib.commission.contents import CLIENT, SHOP, entries
from woodlib.commission.judged import commission_of
from woodlib.commission.shop import setting_out_of
from woodlib.data_files import data_path
from woodlib.errors import InputError
from woodlib.handout.replay import freeze_checked
from woodlib.picture.scene import Picture, Words, corners, walk
from woodlib.setting_out.sheets import sheets
from woodlib.study.study import Study
from woodlib.ways.drawing import draw_verdict
from woodlib.ways.drawn import Drawn, label, sized, wood
from woodlib.ways.given import Given
from woodlib.ways.index import compare, verdict_for
from woodlib.ways.joint_drawing import LEFT
from woodlib.ways.made import MadePiece, Place, Section, Sum, WoodPart
from woodlib.ways.making import ACROSS, made, whole_panel
from woodlib.ways.plan_drawing import panel, sizes_px
from woodlib.ways.registry import every_way, find_way, register, unregister, way_of
from woodlib.ways.rules import CutRule, fixed, travel
from woodlib.ways.steps import SQUARE_EDGE, SQUARE_ENDS, TOGETHER, Step
from woodlib.ways.travel import at_fixing
from woodlib.ways.way import Limit, Opening, Way
from woodlib.words.say import plain_text

SEAT = data_path("briefs/reading_nook_seat.toml")
RULES = (
    CutRule(
        "ledge_gap", "gap at the end of each ledge", (fixed("least"), travel("edge_widening")), "up", "it must not meet"
    ),
    CutRule("ledge_width", "ledge, width", (fixed("ledge"),), "down", "as narrow as the border"),
)
STATES = (
    CutRule("gap_driest", "gap in the driest month", (*RULES[0].terms, travel("edge_narrowing")), "up", "widest"),
    CutRule("gap_dampest", "gap in the dampest month", (fixed("least"),), "down", "it stays open"),
)


def numbers(travels, piece, allowances):
    edges = at_fixing(travels, "edge", 0.5 * travels["width"])
    return edges | {"least": allowances.least_gap_m, "ledge": piece.border_width_m}


def make(given: Given) -> MadePiece:
    long, wide, thick = given.length.exact_m, given.width.exact_m, given.thickness.exact_m
    gap, width = given.cut("ledge_gap"), given.cut("ledge_width")
    length = given.width.less(2 * gap.exact_m, "less both gaps")
    ledge = WoodPart("ledge", 2, length, width, given.thickness)
    span = gap.exact_m, wide - gap.exact_m
    return made(
        given,
        (whole_panel(given), ledge),
        (Sum(ACROSS, ((1, "ledge", length.exact_m), (2, "gap", gap.exact_m)), wide),),
        (Place("panel", (0, long), (0, wide)), Place("ledge", (0, width.exact_m), span, "across", below=True)),
        (Section("panel", (0, wide), (0, thick)), Section("ledge", span, (thick, 2 * thick), False, loose=True)),
    )


def plan(d: Drawn):
    return panel(14.0, 314.0, sizes_px(d)[1])


def joint(d: Drawn):
    low = 100.0 + d.px(d.piece["thickness"])
    gap = d.sizes["ledge_gap"] - d.moved("edge")
    return [
        *wood(corners(LEFT, 100.0, LEFT + 200.0, low)),
        *sized((LEFT + 200.0, low + 20.0), (LEFT + 200.0 + d.px(gap), low + 20.0), gap, "nearest", offset=8.0),
        label(LEFT, 300.0, "ledge and gap"),
    ]


WEDGED = Way(
    key="wedged_ledge",
    name="panel on wedged ledges",
    short="wedged ledges",
    built_as="a panel on ledges that are wedged at the middle",
    kinds=("seat",),
    keeps_flat=True,
    numbers=numbers,
    cuts=RULES,
    states=STATES,
    stopped_by=Limit(("gap_driest",), 0.02, "the gap opens wider than {limit}"),
    opens=Opening("gap", "at the ledge", "gap_driest", "gap_dampest", "ledge_gap"),
    make=make,
    order=(Step("wedge the ledges at the middle", [SQUARE_EDGE, SQUARE_ENDS], [TOGETHER]),),
    plan=plan,
    joint=joint,
    shows="A panel on ledges. Below, the gap at a ledge.",
    main_cuts=("ledge_gap",),
    driest="each gap opens by {edge_narrowing}",
    dampest="each gap closes by {edge_widening}",
    reasons=("The ledges are wedged at the middle alone, and a gap of {ledge_gap} is left at their ends.",),
    steps=("Drive the wedges from both sides.",),
    change="A thinner seat would ask for battens.",
    cautions=("A wedge flies: stand aside.",),
    expect="The gap at each ledge is widest in {month}.",
    watch="beside a wedge",
)


@pytest.fixture
def wedged():
    register(WEDGED)
    yield WEDGED
    unregister(WEDGED.key)


@pytest.fixture
def commission(wedged):
    return commission_of(read_brief(SEAT), "wedged ledges")


def test_it_is_found_compared_and_judged(wedged, commission):
    assert find_way("Wedged ledges") is way_of("wedged_ledge") is wedged
    assert commission.built.way is wedged and commission.built.allowed
    found = compare(commission.piece, 8, commission.months, doubts=commission.doubts, kind="seat")
    assert found["wedged_ledge"].cut("ledge_gap").metres == commission.built.cut("ledge_gap").metres > 0.0
    verdict = verdict_for("wedged_ledge", commission.piece, 8, commission.months, doubts=commission.doubts)
    assert "each gap opens by up to" in verdict.driest and verdict.cut("ledge_gap").text() in verdict.reason
    assert plain_text(verdict.judged.seen()).startswith("The gap at the ledge is ")


def test_both_studies_draw_and_freeze_it(commission):
    for study in (commission.study(), commission.compared()):
        assert "edges" in "\n".join(study.answer().lines()) or WEDGED.title in "\n".join(study.answer().lines())
        checked = freeze_checked(study)
        assert checked.states > 0 and checked.worst_px < 1.0
    assert commission.study().start["way"] == "wedged_ledge"


def test_it_is_set_out_drawn_and_put_in_order(commission):
    plan = setting_out_of(commission)
    assert [(part.name, part.count) for part in plan.made.parts] == [("panel", 1), ("ledge", 2)]
    assert all(whole.adds_up for whole in plan.made.sums)
    assert "wedge the ledges at the middle" in plan.order.names
    for picture in (draw_verdict(commission.built, commission.piece), *sheets(plan).values()):
        said = " ".join(plain_text(mark.text) for mark in walk(picture.marks) if isinstance(mark, Words))
        assert isinstance(picture, Picture)
        assert WEDGED.name in picture.title.lower() or WEDGED.short in said


def test_the_pages_cards_tell_it(commission):
    made = [entry(commission) for entry in entries((*CLIENT, *SHOP))]
    said = "\n".join(str(card) for card in made if not isinstance(card, Study))
    for wanted in (
        WEDGED.built_as,
        WEDGED.steps[0],
        WEDGED.cautions[0],
        "The gap at each ledge is widest in March",
        "if a line opens beside a wedge",
        "gap at the end of each ledge",
        "2 x ledge",
    ):
        assert wanted in said, wanted
    assert "{" not in said


def test_a_key_can_be_taken_only_once(wedged):
    with pytest.raises(InputError, match="key of the way is 'wedged_ledge', which another way has"):
        register(wedged)
    assert [way.key for way in every_way()].count("wedged_ledge") == 1
