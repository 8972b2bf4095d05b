"""The study of the ways to build: true to what it shows, finite at every corner, right in direction, frozen whole."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as some
from scipy.special import ndtri

from woodlib.commission import Commission, chosen_brief, commission_of
from woodlib.data_files import data_path
from woodlib.errors import InputError
from woodlib.handout.record import record
from woodlib.handout.replay import freeze_checked
from woodlib.moisture.equilibrium import emc_percent
from woodlib.movement.wood import wood_of
from woodlib.studies.sliding_piece import sliding_piece_of
from woodlib.studies.ways_to_build import ways_to_build
from woodlib.ways.for_sliders import HELD_RULE, ORDERS, WORRYING_SCORE, Airs, Travels
from woodlib.ways.index import verdict_for
from woodlib.ways.registry import every_way, kinds, way_of, ways_for
from woodlib.words.say import plain_text

DEMOS = ("reading_nook_seat", "serving_board")


@cache
def demo(name: str = DEMOS[0]) -> Commission:
    return commission_of(chosen_brief(data_path(f"briefs/{name}.toml")))


@cache
def study(name: str = DEMOS[0]):
    return demo(name).study()


def test_every_way_has_its_words():
    assert len({way.name for way in every_way()}) == len(every_way())
    for way in every_way():
        assert set(way.main_cuts) <= {rule.key for rule in way.cuts} and len(way.main_cuts) <= 3
        assert len(way.short) <= 19 and way.shows.endswith(".")


@pytest.mark.parametrize("name", DEMOS)
def test_it_starts_at_the_brief(name):
    commission = demo(name)
    start = study(name).start
    year = commission.brief.year()
    assert start == {
        "way": commission.built.key,
        "width": commission.brief.piece.width_m,
        "driest": year.driest().rh_percent,
        "dampest": year.dampest().rh_percent,
    }


@pytest.mark.parametrize("name", DEMOS)
def test_at_its_start_it_says_what_the_verdicts_say(name):
    """One handout must not tell two sizes for one slot."""
    commission, start = demo(name), study(name).start
    for verdict in commission.verdicts:
        state = commission.sliding.judged(verdict.key, start["width"], start["driest"], start["dampest"])
        for cut in verdict.cuts:
            assert float(state.sizes[cut.key]) == pytest.approx(cut.metres, abs=1e-9)
        assert float(state.level) == verdict.level
        assert float(state.most) == pytest.approx(verdict.restrained_strain.high, abs=1e-9)
        if verdict.key not in commission.drawn_ways:
            continue
        said = "\n".join(study(name).answer(way=verdict.key).lines())
        for cut in map(verdict.cut, verdict.way.main_cuts):
            assert f"Cut today: {cut.label}: {cut.text()}" in said


@pytest.mark.parametrize("name", DEMOS)
def test_every_corner_is_finite_and_tells_its_picture(name):
    for corner in study(name).corners():
        answer = study(name).function(**corner)
        taken = record(answer)
        assert all(math.isfinite(leaf) for leaf in taken.leaves.ravel()), corner
        alt = answer.alt_text()
        assert "The panel moves over the year" in alt and " mm)" in alt and "% MC" in alt
        assert len(answer.picture.marks) > 20 and answer.picture.height <= 560


@pytest.mark.parametrize("name", DEMOS)
def test_nothing_is_drawn_off_the_sheet(name):
    for corner in study(name).corners():
        answer = study(name).function(**corner)
        for mark in answer.picture.marks:
            for x, y in getattr(mark, "points", ()):
                assert -6 <= float(x) <= answer.picture.width + 6, (corner, mark)
                assert -6 <= float(y) <= answer.picture.height + 6, (corner, mark)


RANGES = {"driest": (10.0, 40.0), "dampest": (47.0, 77.0), "width": (0.31, 0.63)}


@given(
    way=some.sampled_from(demo().sliding.ways),
    width=some.floats(*RANGES["width"]),
    driest=some.floats(12.0, 40.0),
    dampest=some.floats(47.0, 75.0),
)
def test_drier_winters_damper_summers_and_wider_panels_ask_for_more(way, width, driest, dampest):
    sliding = demo().sliding
    here = sliding.judged(way, width, driest, dampest)
    drier, damper = sliding.judged(way, width, driest - 2.0, dampest), sliding.judged(way, width, driest, dampest + 2.0)
    wider = sliding.judged(way, 1.005 * width, driest, dampest)
    for rule in way_of(way).cuts:
        size = float(here.sizes[rule.key])
        if ", width" in rule.label and rule.rounding == "down":  # what has to go into an opening that does not grow
            assert float(damper.sizes[rule.key]) <= size + 5e-6, rule.label
        elif rule.rounding == "up":
            assert min(float(more.sizes[rule.key]) for more in (drier, damper, wider)) >= size - 5e-6, rule.label
    assert float(drier.most) >= float(here.most) - 1e-5
    assert float(damper.numbers["widening_high"]) >= float(here.numbers["widening_high"]) - 1e-5
    assert float(wider.most) == pytest.approx(float(here.most), rel=2e-3)  # the grip hardly hangs on the width


@pytest.mark.parametrize(
    ("species", "ring_deg", "stock", "driest", "dampest"),
    [
        ("white oak", 0.0, 8.0, Airs(20, 25, 10, 43), Airs(24.4, 62, 43, 77)),
        ("black cherry", 45.0, 9.3, Airs(20, 46, 30, 58), Airs(20, 71, 58, 90)),
        ("sugar maple", 90.0, 12.0, Airs(18, 35, 20, 50), Airs(26, 65, 50, 80)),
    ],
)
def test_the_smooth_numbers_stay_close_to_the_sampled_ones(species, ring_deg, stock, driest, dampest):
    """Anywhere on the sliders: 0.4 mm on a metre of width, the coarseness of the samples; nothing at the brief."""
    wood = wood_of(species)
    smooth = Travels(wood, wood, math.radians(ring_deg), stock, driest, dampest)
    names = [name for name in smooth(driest.rh_percent, dampest.rh_percent, 1.0) if name not in ("width", "stock_mc")]
    for k, place in enumerate((0.0, 0.13, 0.37, 0.61, 0.88, 1.0)):
        dry = driest.lowest_percent + place * (driest.highest_percent - driest.lowest_percent)
        damp = dampest.highest_percent - (place if k % 2 else place**2) * (
            dampest.highest_percent - dampest.lowest_percent
        )
        got, exact = smooth(dry, damp, 1.0), smooth.exact(dry, damp)
        for name, value in zip(names[:-2], exact[:-2], strict=True):
            assert abs(got[name] - value) < 0.4e-3, (name, dry, damp)
        assert got["driest_mc"] == pytest.approx(float(emc_percent(driest.temperature_c, dry)), abs=0.01)
    met = smooth(driest.rh_percent, dampest.rh_percent, 1.0)
    for name, value in zip(names, smooth.exact(driest.rh_percent, dampest.rh_percent), strict=True):
        assert met[name] == pytest.approx(value, abs=1e-12)


def test_the_glued_border_is_drawn_as_it_is_judged():
    glued = study().answer(way="glued_border")
    assert "Glue is refused" in glued.lines()[0]
    verdict = next(v for v in demo().verdicts if v.key == "glued_border")
    tone = next(reading.tone.chosen for reading in glued.readings if reading.label.startswith("Stretched"))
    assert tone == ("fine", "watch", "stop")[verdict.level]


@pytest.mark.parametrize(
    ("values", "fragment"),
    [
        ({"width": "99 in"}, "this study goes from"),
        ({"driest": "80 %"}, "this study goes from"),
        ({"way": "dovetail"}, "choose one of"),
        ({"drieest": 30}, "Did you mean 'driest'"),
    ],
)
def test_what_it_cannot_use_it_says(values, fragment):
    with pytest.raises(InputError) as caught:
        study().answer(**values)
    assert fragment in str(caught.value) and "\n" not in str(caught.value)


KIND_SIZES = {
    "turned part": ("25 mm", "50 mm", "25 mm"),
    "drawer front": ("150 mm", "500 mm", "19 mm"),
    "drawer side": ("120 mm", "450 mm", "12 mm"),
    "drawer bottom": ("400 mm", "500 mm", "10 mm"),
}


def emc_of(travels):
    """Twelve months that are the two of the sliders in turn."""
    return [float(emc_percent(air.temperature_c, air.rh_percent)) for air in (travels.driest, travels.dampest)] * 6


def sliding_for(kind: str):
    """The demonstration's house and wood, with a piece of a kind and every way that serves it."""
    sizes = KIND_SIZES.get(kind, ("500 mm", "1100 mm", "22 mm"))
    commission = demo()
    piece = replace(commission.piece, **dict(zip(("width_m", "length_m", "thickness_m"), sizes, strict=True)))
    piece = replace(piece, border_thickness_m=piece.thickness_m)
    ways = tuple(way.key for way in ways_for(kind))
    return sliding_piece_of(commission.brief, piece, commission.months, commission.doubts, ways)


@pytest.mark.parametrize("kind", kinds())
def test_every_kind_of_piece_is_drawn_with_room_in_both_months(kind):
    sliding = sliding_for(kind)
    shown = ways_to_build("a piece", sliding, sliding.ways[0])
    for corner in shown.corners():
        answer = shown.function(**corner)
        assert all(math.isfinite(leaf) for leaf in record(answer).leaves.ravel()), corner
        for mark in answer.picture.marks:
            for x, y in getattr(mark, "points", ()):
                assert -6 <= float(x) <= answer.picture.width + 6, (corner, mark)
                assert -6 <= float(y) <= answer.picture.height + 6, (corner, mark)
        texts = (plain_text(mark.text) for mark in answer.picture.marks if hasattr(mark, "text"))
        assert not any("{" in text for text in texts) and "{" not in "".join(answer.lines())


@pytest.mark.parametrize("way", [way.key for way in every_way()])
def test_a_month_says_on_a_slider_what_the_verdict_says(way):
    """One sentence, two readers: the words of a verdict and those a slider moves must agree."""
    kind = next(kind for kind in kinds() if way in {known.key for known in ways_for(kind)})
    sliding = sliding_for(kind)
    travels = sliding.travels
    state = sliding.judged(way, sliding.piece.width_m, travels.driest.rh_percent, travels.dampest.rh_percent)
    verdict = verdict_for(way, sliding.piece, travels.stock_mc_percent, emc_of(travels), doubts=travels.doubts)
    for side, said in (("narrowing", verdict.driest), ("widening", verdict.dampest)):
        assert plain_text(state.month(side)) in said


def test_a_month_on_the_other_side_of_today_is_said_to_do_nothing():
    sliding = demo().sliding
    travels = replace(sliding.travels, stock_mc_percent=5.0)  # drier than the driest month
    wet = replace(sliding, travels=travels)
    state = wet.judged("glued_border", sliding.piece.width_m, 40.0, 62.0)
    assert plain_text(state.month("narrowing")) == "it is no drier than today, so it is not pulled in the first year"


@pytest.mark.parametrize("kind", ["back", "turned part"])
def test_other_kinds_freeze_too(kind):
    sliding = sliding_for(kind)
    assert freeze_checked(ways_to_build("a piece", sliding, sliding.ways[0])).worst_px <= 0.5


def test_it_freezes_and_says_what_python_says():
    checked = freeze_checked(study())
    assert checked.states >= 300 and checked.worst_px <= 0.5
    assert checked.frozen.plan.size <= 10_000


def test_the_slider_warns_where_the_stress_model_does_and_the_strain_rule_does_not():
    """Found by comparing a quartersawn seat's slider with its verdict: the two must not contradict each other."""
    commission = demo()
    sliding = commission.sliding
    driest, dampest = sliding.travels.driest.rh_percent, sliding.travels.dampest.rh_percent
    always = tuple(tuple(4.0 if row == column == 0 else 0.0 for column in range(ORDERS)) for row in range(ORDERS))
    # A border that takes a twentieth of the movement, so that the strain rule is content, and a crack nearly sure.
    glued = replace(sliding, shares=((0.05,),) * len(sliding.ways), stress=replace(sliding.stress, table=always))
    state = glued.judged("glued_border", sliding.piece.width_m, driest, dampest)
    assert float(state.level) == 1.0 and float(state.only_stress_warns) == 1.0
    assert "careful side counts" in plain_text(state.reason())
    free = glued.judged("breadboard", sliding.piece.width_m, driest, dampest)
    assert float(free.level) == 0.0


def test_the_stress_score_is_the_verdicts_at_the_briefs_own_air_and_near_the_model_elsewhere():
    sliding = demo().sliding
    travels, score = sliding.travels, sliding.stress
    through_year = HELD_RULE(sliding.piece).through_year
    for driest in np.linspace(travels.driest.lowest_percent, travels.driest.highest_percent, 5):
        for dampest in np.linspace(travels.dampest.lowest_percent, travels.dampest.highest_percent, 5):
            airs = ((travels.dampest, dampest), (travels.driest, driest))
            moistures = [float(emc_percent(air.temperature_c, rh)) for air, rh in airs]
            likely = through_year(travels.stock_mc_percent, moistures).chance.sound.likely
            if 0.001 < likely < 0.9:
                assert score(driest, dampest) == pytest.approx(ndtri(likely), abs=0.1)
    glued = next(verdict for verdict in demo().verdicts if verdict.key == "glued_border")
    own = score(travels.driest.rh_percent, travels.dampest.rh_percent)
    assert own == pytest.approx(ndtri(glued.panel.chance.sound.likely), abs=1e-9) and own > WORRYING_SCORE
