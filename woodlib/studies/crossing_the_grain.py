"""What happens when a border crosses the grain of a panel: glued, slotted, or turned so that grain runs with grain."""

from __future__ import annotations

from typing import Any

from ..restraint.measures import ODDS_EDGES, ODDS_WORDS, WORRYING_CHANCE, strain_edges
from ..restraint.normal import normal_score
from ..species import find_species
from ..study import Answer, Choice, Reading, Span, study
from ..words.decided import Decided, Pick, in_sight, level, pick, reached, size_of, smaller
from ..words.say import Said, length, moisture, movement, percent, say, strain, stress
from .crossing_chance import scores
from .crossing_fine_print import fine_print
from .crossing_numbers import (
    BORDER_THICKNESSES_M,
    BORDERS_M,
    DAMPEST_RH,
    DRIEST_RH,
    INCH_M,
    RINGS_DEG,
    THICKNESS_M,
    WIDTHS_M,
    CutWood,
    Season,
    cut_wood,
)
from .crossing_panels import Panel, held_wood
from .crossing_pictures import glued_picture, same_grain_picture, slotted_picture
from .crossing_sheet import Drawn
from .crossing_words import (
    HEADLINES,
    LEGEND,
    SAME_GRAIN,
    SHORT,
    SLOTTED,
    STRAIN_RULE,
    TOGETHER,
    TONES,
    Judged,
    in_words,
    told,
)

WOODS = {name: name for name in ("white oak", "white ash", "black cherry", "black walnut", "sugar maple")}
RINGS = {cut: cut for cut in RINGS_DEG}
JOINTS = {
    "glued": "glued across the end, all the way",
    "slotted": "on pins in slots, free to slide",
    "same-grain": "along the long edges, grain with grain",
}


@study(
    key="crossing-the-grain",
    question="A border crosses the grain of a solid panel. Will it crack the panel?",
    inputs=[
        Choice("wood", "Wood", WOODS, "white oak"),
        Choice("rings", "Boards", RINGS, "flatsawn"),
        Choice("joint", "The border is", JOINTS, "glued"),
        Span("width", "Panel, across its grain", "length", *WIDTHS_M, INCH_M, 20 * INCH_M),
        Span("border", "Width of the border", "length", *BORDERS_M, INCH_M / 4, 2 * INCH_M),
        Span("thickness", "Thickness of the border", "length", *BORDER_THICKNESSES_M, INCH_M / 8, THICKNESS_M),
        Span("driest", "Air in the driest month", "humidity", *DRIEST_RH, 1, 25),
        Span("dampest", "Air in the dampest month", "humidity", *DAMPEST_RH, 1, 62),
    ],
    more=("rings", "width", "thickness"),
)
def crossing_the_grain(
    wood: str, rings: str, joint: str, width: float, border: float, thickness: float, driest: float, dampest: float
) -> Answer:
    """Shape, stress, both measures of danger and the careful side, for a panel glued up halfway through its year."""
    cut = cut_wood(wood, rings)
    drawn = Drawn(rings, in_sight(width), in_sight(border), in_sight(thickness), cut.season(driest, dampest))
    if joint == "glued":
        return _glued(cut, drawn, held_wood(wood, rings).panel(width, border, thickness))
    return _free(cut, drawn, joint)


def _glued(wood: CutWood, drawn: Drawn, panel: Panel) -> Answer:
    season = drawn.season
    held_back = panel.restraint * season.gathered
    pulls = [panel.restraint * tension * wood.modulus_pa for tension in season.relaxed]
    odds = scores(wood, drawn.width, panel, season)
    judged = Judged(
        level(held_back, strain_edges()),
        reached(odds["likely"], normal_score(WORRYING_CHANCE)),
    )
    picture = glued_picture(drawn, panel, pulls[0] / wood.strength_pa, judged.warning, LEGEND)
    readings = (
        _wants(season, drawn.width * season.panel_swing, "if nothing held it"),
        Reading(
            "Held back at the end",
            _share(panel),
            "of that movement: the border's grip at the middle of the glue line (plane field)",
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
                bound=stress(panel.restraint * season.swing * wood.modulus_pa),
                strength=_strength(wood),
            ),
        ),
        _chance(odds),
        Reading("Both together", judged.of(SHORT), judged.of(TOGETHER), judged.of(TONES)),
        _corner(wood, drawn, panel, pulls[0]),
    )
    return Answer(picture, judged.of(HEADLINES), readings, told(judged, drawn), fine_print(wood))


def _share(panel: Panel) -> Pick:
    """The share held back, with its range where constants are estimated."""
    mid, low, high = (part * 100.0 for part in (panel.restraint, panel.restraint_low, panel.restraint_high))
    ranged = say("about {mid}, could be {low} to {high}", mid=percent(mid), low=percent(low), high=percent(high))
    return pick(high - low, [0.1], [say("about {mid}", mid=percent(mid)), ranged])


_ODDS_SCORES = tuple(normal_score(edge) for edge in ODDS_EDGES)
_ABOUT = tuple(words if words[0] in "la" else f"about {words}" for words in ODDS_WORDS)


def _odds(score: Decided, about: bool = False) -> Any:
    return pick(score, _ODDS_SCORES, _ABOUT if about else ODDS_WORDS)


def _chance(found: dict[str, Decided]) -> Reading:
    span = pick(
        found["careful"],
        _ODDS_SCORES[:1],
        ["", say(", could be {low} to {high}", low=_odds(found["low"]), high=_odds(found["careful"]))],
    )
    value = say("{likely}{span}", likely=_odds(found["likely"], True), span=span)
    words = say(
        "in the first years, for a sound panel; {checked} if its ends already have checks",
        checked=_odds(found["checked"], True),
    )
    tone = level(found["likely"], [_ODDS_SCORES[0], normal_score(WORRYING_CHANCE)])
    return Reading("Chance of a crack", value, words, Pick(tone, ("fine", "watch", "stop")))


def _strength(wood: CutWood) -> Said:
    status = wood.elastic.tension_perpendicular.status
    source = {"derived": "mean of the printed rows of its group", "estimated": "worked out from the density"}.get(
        status, status
    )
    return say("its strength this way is {strength} ({source})", strength=stress(wood.strength_pa), source=source)


def _wants(season: Season, size: Any, words: str) -> Reading:
    moist = say(
        "{words}; the wood goes from {damp} in the dampest month to {dry} in the driest",
        words=words,
        dry=moisture(season.dry_mc),
        damp=moisture(season.damp_mc),
    )
    return Reading("The panel wants to move", _size(size), moist)


def _size(size: Any) -> Any:
    least = INCH_M / 32
    return pick(size, [least], [say("less than {least}", least=movement(least)), movement(size)])


def _corner(wood: CutWood, drawn: Drawn, panel: Panel, pull: Decided) -> Reading:
    shear, opening = pull * panel.shear, pull * panel.opening
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
        "mean shear over the last {t} of glue, {h} high, and {across}; stress at the very corner has no number",
        t=length(THICKNESS_M),
        h=length(smaller(drawn.thickness, THICKNESS_M)),
        across=across,
    )
    if along is not None:
        words = say(
            "{words}. Glued across the grain, wood holds about {third} in shear, a third of what it holds along it",
            words=words,
            third=stress(along.number / 3.0),
        )
    return Reading("Glue line at each corner", stress(shear), words)


def _free(wood: CutWood, drawn: Drawn, joint: str) -> Answer:
    season = drawn.season
    held = Reading(
        "Held back at the end",
        "nothing",
        "so nothing pulls the wood apart: by both measures there is no danger from the border",
        "fine",
    )
    if joint == "slotted":
        corner = drawn.width * (season.misfit * 0.5)
        readings = (
            _wants(season, drawn.width * season.panel_swing, "and may, past the border"),
            held,
            Reading(
                "Each corner, over the year",
                _size(corner),
                "the border stands out past the panel by this much in the driest month, the panel past the border in "
                "the dampest",
            ),
        )
        headline = "On slots the panel moves and the border stays: no pull, but the corners never stay flush."
        return Answer(
            slotted_picture(drawn), headline, readings, in_words(SLOTTED, drawn), fine_print(wood, held=False)
        )
    whole = drawn.width + drawn.border * 2.0
    readings = (
        _wants(season, whole * season.panel_swing, "strips and all, and may"),
        held,
        Reading(
            "Each long edge, over the year",
            _size(whole * (season.panel_swing * 0.5)),
            "half of it in from where it was glued up, half of it out: leave room beside it",
        ),
    )
    headline = "Grain with grain nothing is held, but the ends stay end grain and the whole width moves."
    return Answer(
        same_grain_picture(drawn), headline, readings, in_words(SAME_GRAIN, drawn), fine_print(wood, held=False)
    )
