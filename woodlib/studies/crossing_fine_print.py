"""Where the numbers of crossing the grain come from: printed, recalled, worked out or estimated, in sentences."""

from __future__ import annotations

from functools import lru_cache
from math import radians

from ..restraint.assumptions import Assumption, assumption
from ..restraint.measures import STATUS_WORDS, known_sentences
from ..words.say import Said, length, say
from .crossing_numbers import LENGTH_M, ROOM_C, THICKNESS_M, CutWood

_SHOWN_ASSUMPTIONS = (
    "yield_strain",
    "failure_strain",
    "relaxation_rate",
    "delayed_share",
    "strength_variation",
    "demand_variation",
    "calibrated_strength_factor",
    "duration_factor",
    "check_depth",
    "toughness",
)


@lru_cache(maxsize=64)
def fine_print(wood: CutWood, held: bool = True) -> tuple[str | Said, ...]:
    """The fine print for one wood, glued (``held``) or free."""
    general = (
        say(
            "Glued up halfway through the year's movement. Panel {t} thick and {l} long, a border on both ends, of the same "
            "wood, cut the same way.",
            t=length(THICKNESS_M),
            l=length(LENGTH_M),
        ),
        f"The wood is taken to follow the air of each month in full, at {ROOM_C:.0f} °C; a finish makes the swing "
        f"smaller.",
        "Moisture from air: Wood Handbook FPL-GTR-190 (2010), eq. 4-5; movement: its eq. 13-2 from 6 to 14 % MC and "
        "total shrinkage outside, with the seams smoothed (within 1 %).",
    )
    if not held:
        return (
            *general,
            "Slots and strips are taken to slide without friction. Place of the outer pins: common practice, no "
            "source.",
            _joined(wood.wood.remarks),
        )
    return (*general, _joined(_constants(wood)), *_measures(), _joined(_remarks(wood)))


def _remarks(wood: CutWood) -> tuple[str, ...]:
    return (*wood.elastic.remarks(radians(wood.ring_angle_deg)), *wood.wood.remarks)


def _joined(sentences: tuple[str, ...]) -> str:
    # One line for each wood, however much there is to say: a page keeps one make-up for all of them.
    ended = (text if text.endswith(".") else text + "." for text in sentences)
    return (
        " ".join(text[0].upper() + text[1:] for text in ended)
        or "Nothing is estimated or doubtful in the numbers of this wood."
    )


def _measures() -> tuple[str, ...]:
    """What the two measures rest on."""
    rows = (assumption(key) for key in _SHOWN_ASSUMPTIONS)
    return (
        "Strain rule: what is gathered in tension, by the same relaxation as the stress; what the damp season squeezed "
        "short is taken back first.",
        "Stress model: plane field, relaxed through the year, against the strength in that direction, and the energy that a "
        "split sets free against what it costs. The likely chance is calibrated on one published panel; the highest is the "
        "careful view, an upper bound.",
        *(_assumed(row) for row in rows),
        "Not in these numbers: uneven moisture in the first weeks, knots, poor joints, thin panels that bow.",
    )


def _assumed(row: Assumption) -> str:
    span = f"{row.middle:.3g}" if row.low == row.high else f"{row.middle:.3g} ({row.low:.3g} to {row.high:.3g})"
    unit = f" {row.unit}" if row.unit else ""
    return f"{row.meaning[0].upper()}{row.meaning[1:]}: {span}{unit}; {STATUS_WORDS[row.status].lower()}: {row.source}."


def _constants(wood: CutWood) -> tuple[str, ...]:
    """The numbers of the wood by how well they are known."""
    return known_sentences({row[0]: row[1] for row in wood.elastic.provenance()}, wood.species)
