"""What happens when a rim crosses the grain of a panel: glued, slotted, or turned so that grain runs with grain."""

from __future__ import annotations

from typing import Any

from scipy.special import ndtri

from ..reading.decided import Decided, Pick, level, pick, reached, size_of
from ..reading.say import length, moisture, movement, percent, say, strain, stress
from ..restraint.measures import ODDS_EDGES, ODDS_WORDS, WORRYING_CHANCE, strain_edges
from ..species import find_species
from ..study import Answer, Choice, Reading, Span, study
from .crossing_fine_print import fine_print
from .crossing_numbers import (
    CHANCES,
    DAMPEST_RH,
    DRIEST_RH,
    INCH_M,
    RIMS_M,
    THICKNESS_M,
    WIDTHS_M,
    Geometry,
    HeldWood,
    Season,
    held_wood,
    terms,
)
from .crossing_pictures import Drawn, glued_picture, same_grain_picture, slotted_picture
from .crossing_words import (
    HEADLINES,
    SAME_GRAIN,
    SHADE_PA,
    SHORT,
    SLOTTED,
    STRAIN_RULE,
    TOGETHER,
    TONES,
    Judged,
    in_words,
    legend,
    told,
)

WOODS = {
    "white oak": "white oak, flatsawn",
    "white oak, quartersawn": "white oak, quartersawn",
    "white ash": "white ash, flatsawn",
    "black cherry": "black cherry, flatsawn",
    "black walnut": "black walnut, flatsawn",
    "sugar maple": "sugar maple, flatsawn",
}
JOINTS = {
    "glued": "glued across the end, all the way",
    "slotted": "on pins in slots, free to slide",
    "same-grain": "along the long edges, grain with grain",
}


@study(
    key="crossing-the-grain",
    question="A rim crosses the grain of a solid panel. Will it crack the panel?",
    inputs=[
        Choice("wood", "Wood", WOODS, "white oak"),
        Choice("joint", "The rim is", JOINTS, "glued"),
        Span("width", "Panel, across its grain", "length", *WIDTHS_M, INCH_M, 20 * INCH_M),
        Span("rim", "Width of the rim", "length", *RIMS_M, INCH_M / 4, 2 * INCH_M),
        Span("driest", "Air in the driest month", "humidity", *DRIEST_RH, 1, 25),
        Span("dampest", "Air in the dampest month", "humidity", *DAMPEST_RH, 1, 62),
    ],
)
def crossing_the_grain(wood: str, joint: str, width: float, rim: float, driest: float, dampest: float) -> Answer:
    """Shape, stress, both measures of danger and the careful side, for a panel glued up halfway through its year."""
    species, _, rings = wood.partition(", ")
    held = held_wood(species, rings or "flatsawn")
    geometry, season = held.geometry(width, rim), held.season(driest, dampest)
    drawn = Drawn(width, rim, geometry, season)
    if joint == "glued":
        return _glued(held, drawn)
    return _free(held, drawn, joint)


def _kept(number: float) -> Decided:
    # A page multiplies these itself, so that a table need not hold every width for every air.
    return Decided("+", float(number), 0.0)


def _glued(wood: HeldWood, drawn: Drawn) -> Answer:
    geometry, season = drawn.geometry, drawn.season
    restraint = _kept(geometry.restraint)
    held_back = restraint * season.swing
    pulls = [
        restraint * (wood.modulus_pa * tension) for tension in (season.relaxed, season.relaxed_low, season.relaxed_high)
    ]
    scores = _scores(geometry, season)
    judged = Judged(
        level(held_back, strain_edges()),
        reached(scores["likely"], float(ndtri(WORRYING_CHANCE))),
        _kept(bool(wood.strength_pa)),
    )
    shades = _kept(wood.modulus_pa * season.relaxed / (wood.strength_pa or SHADE_PA))
    picture = glued_picture(drawn, shades, judged.warning, legend(judged))
    readings = (
        _wants(season, drawn.width_m * season.panel_swing, "if nothing held it"),
        Reading(
            "Held back at the end",
            _share(geometry),
            "of that movement: the rim's grip at the middle of the glue line (plane field)",
        ),
        Reading(
            "Strain rule",
            strain(held_back),
            say(
                "{what}; the edges are {low} and {high}",
                what=pick(judged.step, [1.0, 2.0], STRAIN_RULE),
                low=strain(strain_edges()[0]),
                high=strain(strain_edges()[1]),
            ),
            pick(judged.step, [1.0, 2.0], ["fine", "watch", "stop"]),
        ),
        Reading(
            "Stress model",
            say(
                "about {mid}, could be {low} to {high}",
                mid=stress(pulls[0]),
                low=stress(pulls[1]),
                high=stress(pulls[2]),
            ),
            say(
                "expected at the middle of the glue line in the driest month; if nothing relaxed, at most {bound}; "
                "{strength}",
                bound=stress(held_back * wood.modulus_pa),
                strength=_strength(wood, judged),
            ),
        ),
        _chance(scores, judged),
        Reading("Both together", judged.of(SHORT), judged.of(TOGETHER), judged.of(TONES)),
        _corner(wood, geometry, pulls[0]),
    )
    return Answer(picture, judged.of(HEADLINES), readings, told(judged, season), fine_print(wood))


def _share(geometry: Geometry) -> Pick:
    """The share held back, with its range where constants are estimated."""
    mid, low, high = (100.0 * part for part in (geometry.restraint, geometry.restraint_low, geometry.restraint_high))
    ranged = say("about {mid}, could be {low} to {high}", mid=percent(mid), low=percent(low), high=percent(high))
    return pick(high - low, [0.1], [say("about {mid}", mid=percent(mid)), ranged])


def _scores(geometry: Geometry, season: Season) -> dict[str, Decided]:
    """Normal scores of the chances, decided from what width and rim give and what the air gives."""
    rows = _NO_SCORES if season.chance is None else season.chance.tolist()
    parts = terms(_kept(geometry.log_restraint), _kept(geometry.log_spread))
    scores = {}
    for name, row in zip(CHANCES, rows, strict=True):
        score: Any = _kept(row[0])
        for part, coefficient in zip(parts, row[1:], strict=True):
            score = score + part * coefficient
        scores[name] = score
    return scores


_NO_SCORES = [[-9.0, 0.0, 0.0]] * len(CHANCES)  # never shown
_ODDS_SCORES = tuple(float(ndtri(edge)) for edge in ODDS_EDGES)
_ABOUT = tuple(words if words[0] in "la" else f"about {words}" for words in ODDS_WORDS)


def _odds(score: Decided, about: bool = False) -> Any:
    return pick(score, _ODDS_SCORES, _ABOUT if about else ODDS_WORDS)


def _chance(scores: dict[str, Decided], judged: Judged) -> Reading:
    span = pick(
        scores["careful"],
        _ODDS_SCORES[:1],
        ["", say(", could be {low} to {high}", low=_odds(scores["calibrated"]), high=_odds(scores["careful"]))],
    )
    value = say("{likely}{span}", likely=_odds(scores["likely"], True), span=span)
    words = say(
        "in the first years, for a sound panel; {checked} if its ends already have checks",
        checked=_odds(scores["checked"], True),
    )
    tone = level(scores["likely"], [_ODDS_SCORES[0], float(ndtri(WORRYING_CHANCE))]) * judged.known + (
        3.0 - judged.known * 3.0
    )
    missing = "no table prints this wood's strength across the grain, and it is not guessed"
    return Reading(
        "Chance of a crack",
        judged.where_known(value, "not given"),
        judged.where_known(words, missing),
        Pick(tone, ("fine", "watch", "stop", "")),
    )


def _strength(wood: HeldWood, judged: Judged) -> Pick:
    value = wood.elastic.tension_perpendicular
    number, status = (value.number, value.status) if value else (SHADE_PA, "printed")
    source = {"printed": "printed", "derived": "mean of the printed rows of its group"}.get(status, status)
    known = say("its strength is {strength} ({source})", strength=stress(number), source=source)
    return judged.where_known(known, "no strength is printed for this wood")


def _wants(season: Season, size: Any, words: str) -> Reading:
    moist = say(
        "{words}; the wood goes from {damp} in the dampest month to {dry} in the driest",
        words=words,
        dry=moisture(season.dry_mc),
        damp=moisture(season.damp_mc),
    )
    return Reading("The panel wants to move", _size(size), moist)


def _size(size: float) -> Any:
    least = INCH_M / 32
    return pick(size, [least], [say("less than {least}", least=movement(least)), movement(size)])


def _corner(wood: HeldWood, geometry: Geometry, pull: Decided) -> Reading:
    shear, opening = pull * geometry.shear, pull * geometry.opening
    along = find_species(wood.species).get("shear_parallel_pa")
    across = pick(
        opening,
        [0.0],
        [
            say("pressed together by {x}", x=stress(size_of(opening))),
            say("pulled open by {x}", x=stress(size_of(opening))),
        ],
    )
    words: Any = say(
        "mean shear over the last {t}, and {across}; stress at the very corner has no number",
        t=length(THICKNESS_M),
        across=across,
    )
    if along is not None:
        words = say(
            "{words}. Glued across the grain, wood holds about {third} in shear, a third of what it holds along it",
            words=words,
            third=stress(along.number / 3.0),
        )
    return Reading("Glue line at each corner", stress(shear), words)


def _free(wood: HeldWood, drawn: Drawn, joint: str) -> Answer:
    season, width = drawn.season, drawn.width_m
    held = Reading(
        "Held back at the end",
        "nothing",
        "so nothing pulls the wood apart: by both measures there is no danger from the rim",
        "fine",
    )
    if joint == "slotted":
        inward = (season.along - season.across) * (width / 2)
        outward = (season.swing - season.along + season.across) * (width / 2)
        readings = (
            _wants(season, width * season.panel_swing, "and may, past the rim"),
            held,
            Reading(
                "Corner in the driest month",
                _size(inward),
                "the rim stands out past the panel by this much at each corner",
            ),
            Reading(
                "Corner in the dampest month",
                _size(outward),
                "the panel stands out past the rim by this much at each corner",
            ),
        )
        headline = "On slots the panel moves and the rim stays: no pull, but the corners never stay flush."
        return Answer(
            slotted_picture(drawn), headline, readings, in_words(SLOTTED, season), fine_print(wood, held=False)
        )
    whole = width + 2.0 * drawn.rim_m
    readings = (
        _wants(season, whole * season.panel_swing, "strips and all, and may"),
        held,
        Reading(
            "Each long edge, over the year",
            _size(season.panel_swing * (whole / 2.0)),
            "half of it in from where it was glued up, half of it out: leave room beside it",
        ),
    )
    headline = "Grain with grain nothing is held, but the ends stay end grain and the whole width moves."
    return Answer(
        same_grain_picture(drawn), headline, readings, in_words(SAME_GRAIN, season), fine_print(wood, held=False)
    )
