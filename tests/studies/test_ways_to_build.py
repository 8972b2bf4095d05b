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
from woodlib.studies.sliding_piece import sliding_piece_of
from woodlib.studies.ways_to_build import ways_to_build
from woodlib.ways.grip import WORRYING_SCORE
from woodlib.ways.held import plane_field
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
        state = commission.sliding.at(start["driest"], start["dampest"]).judged(verdict.key, start["width"])
        for cut in verdict.cuts:
            assert float(state.sizes[cut.key]) == pytest.approx(cut.metres, abs=1e-9)
        assert float(state.level) == verdict.level
        assert float(state.most) == pytest.approx(verdict.restrained_strain.high, abs=1e-9)
        if verdict.key not in commission.drawn_ways:
            continue
        said = "\n".join(study(name).answer(way=verdict.key).lines())
        for cut in map(verdict.cut, verdict.way.main_cuts):
            assert f"Cut today: {cut.label}: {cut.text()}" in said
            assert not cut.chain or all(times == 1 for times, _ in cut.chain)  # marked first, and only then told


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
    here, wider = (sliding.at(driest, dampest).judged(way, size) for size in (width, 1.005 * width))
    drier, damper = (sliding.at(*air).judged(way, width) for air in ((driest - 2.0, dampest), (driest, dampest + 2.0)))
    for rule in way_of(way).cuts:
        size = float(here.sizes[rule.key])
        if ", width" in rule.label and rule.rounding == "down":  # what has to go into an opening that does not grow
            assert float(damper.sizes[rule.key]) <= size + 5e-6, rule.label
        elif rule.rounding == "up":
            assert min(float(more.sizes[rule.key]) for more in (drier, damper, wider)) >= size - 5e-6, rule.label
    assert float(drier.most) >= float(here.most) - 1e-5
    assert float(damper.numbers["widening_high"]) >= float(here.numbers["widening_high"]) - 1e-5
    assert float(wider.most) == pytest.approx(float(here.most), rel=2e-3)  # the grip hardly hangs on the width


@given(
    width=some.floats(*RANGES["width"]), driest=some.floats(*RANGES["driest"]), dampest=some.floats(*RANGES["dampest"])
)
def test_a_slider_goes_by_the_numbers_of_a_verdict_wherever_it_stands(width, driest, dampest):
    sliding = demo().sliding
    piece = replace(sliding.piece, width_m=width)
    air = ((sliding.driest, driest), (sliding.dampest, dampest))
    months = [float(month.emc_percent(rh)) for month, rh in air] * 6
    here = sliding.at(driest, dampest)
    for way in sliding.ways:
        verdict = verdict_for(way, piece, sliding.stock_mc_percent, months, doubts=sliding.doubts)
        judged = here.judged(way, width)
        for name, value in verdict.quantities.items():
            if name not in ("held_share", "push_share", "finished_length", "border"):
                assert float(judged.numbers[name]) == pytest.approx(value, abs=1e-12), (way, name)
        assert float(judged.numbers["held_share"]) == pytest.approx(verdict.quantities["held_share"], abs=2e-3)


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


def emc_of(sliding):
    """Twelve months that are the two of the sliders in turn."""
    return [float(air.emc_percent(air.rh_percent)) for air in (sliding.driest, sliding.dampest)] * 6


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
    state = sliding.at(sliding.driest.rh_percent, sliding.dampest.rh_percent).judged(way, sliding.piece.width_m)
    verdict = verdict_for(way, sliding.piece, sliding.stock_mc_percent, emc_of(sliding), doubts=sliding.doubts)
    for side, said in (("narrowing", verdict.driest), ("widening", verdict.dampest)):
        assert plain_text(state.month(side)) in said


def test_a_month_on_the_other_side_of_today_is_said_to_do_nothing():
    sliding = demo().sliding
    dry = replace(sliding, stock_mc_percent=5.0)  # drier than the driest month
    state = dry.at(40.0, 62.0).judged("glued_border", sliding.piece.width_m)
    assert plain_text(state.month("narrowing")) == "it is no drier than today, so it is not pulled in the first year"


@pytest.mark.parametrize("kind", ["back", "turned part"])
def test_other_kinds_freeze_too(kind):
    sliding = sliding_for(kind)
    assert freeze_checked(ways_to_build("a piece", sliding, sliding.ways[0])).worst_px <= 0.5


def test_it_freezes_and_says_what_python_says():
    checked = freeze_checked(study())
    assert checked.states >= 300 and checked.worst_px <= 0.5
    assert checked.frozen.plan.size <= 10_000


def test_the_stress_score_is_the_verdicts_at_the_briefs_own_air_and_near_the_model_elsewhere():
    sliding = demo().sliding
    score, through_year = sliding.score, plane_field(sliding.piece).through_year
    for driest in np.linspace(sliding.driest.lowest_percent, sliding.driest.highest_percent, 5):
        for dampest in np.linspace(sliding.dampest.lowest_percent, sliding.dampest.highest_percent, 5):
            airs = ((sliding.dampest, dampest), (sliding.driest, driest))
            moistures = [float(air.emc_percent(rh)) for air, rh in airs]
            likely = through_year(sliding.stock_mc_percent, moistures).chance.sound.likely
            if 0.001 < likely < 0.9:
                assert score(driest, dampest) == pytest.approx(ndtri(likely), abs=0.1)
    glued = next(verdict for verdict in demo().verdicts if verdict.key == "glued_border")
    own = score(sliding.driest.rh_percent, sliding.dampest.rh_percent)
    assert own == pytest.approx(ndtri(glued.panel.chance.sound.likely), abs=1e-8) and abs(own - WORRYING_SCORE) < 0.1
