"""What crossing the grain says: two measures judged together, the legend of the shades, the picture in words."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from ..restraint.measures import STRAIN_WORDS, agreement_sentence
from ..words.decided import Decided, Pick, pick, reached
from ..words.say import Said, length, moisture, say
from .crossing_sheet import LOAD_PATH, SHARES, TIMES, Drawn


@dataclass(frozen=True)
class Judged:
    """What the two measures say: ``step`` of the strain rule 0 to 2, ``worrying`` 1 where the stress model warns."""

    step: Decided
    worrying: Decided

    @property
    def warning(self) -> Decided:
        """1 where either measure leaves room for a crack."""
        return reached(self.step * 2.0 + self.worrying, 1.0)

    def of(self, options: tuple[str, ...]) -> Pick:
        """One of six options, by step and worry."""
        return Pick(self.step * 2.0 + self.worrying, options)


STRAIN_RULE = tuple(f"so the wood {text}" for text in STRAIN_WORDS)
_SAMPLE_STRAINS = (0.0, 0.005, 0.010)
TOGETHER = tuple(agreement_sentence(held, chance) for held in _SAMPLE_STRAINS for chance in (0.0, 0.5))
SHORT = (
    "calm",
    "they disagree",
    "one calm, one not quite",
    "one warns, one nearly",
    "they disagree",
    "both warn",
)
TONES = ("fine", "stop", "watch", "stop", "stop", "stop")
HEADLINES = (
    "Glued like this, a middling panel should come through the year; a commission goes by the careful end.",
    "Do not glue it: it may crack, by the stress model.",
    "Better not glue it: it may take a set, and crack over the years.",
    "Do not glue it: it may take a set, and the stress model warns of a crack.",
    "Do not glue it: the strain rule warns, though the stress model does not.",
    "Do not glue it: both measures warn of a crack.",
)


_SHARES = [f"{100 * share:.0f}" for share in SHARES[2:]]
LEGEND = (
    "Pull across the grain, driest month",
    "squeezed a little",
    "at rest",
    f"up to {_SHARES[0]} % of its strength",
    f"{_SHARES[0]} to {_SHARES[1]} %",
    f"{_SHARES[1]} to {_SHARES[2]} %",
    f"{_SHARES[2]} % of its strength, or more",
)
"""A heading, and words for the six shades, lowest first."""

_PATH = " ".join(line for _, line in LOAD_PATH)
_SCALE = f"Movement is drawn {TIMES} times too large."
SLOTTED = (
    "Half a panel from above in its driest month: it has become narrower than its border, and the outer pins have slid "
    f"inward in their slots. {_SCALE}"
)
SAME_GRAIN = (
    "Half a panel from above in its driest month, with strips along its long edges: all of it has become narrower "
    f"by the same share. {_SCALE}"
)


def in_words(picture: Any, drawn: Drawn) -> Said:
    """A picture in words, with the sizes and the moistures it is drawn for."""
    return say(
        "{picture} The panel is {w} wide, of {rings} boards; the border is {b} wide and {h} thick. The wood is at {dry} "
        "there; in the dampest month it is at {damp}.",
        picture=picture,
        w=length(drawn.width),
        rings=drawn.rings,
        b=length(drawn.border),
        h=length(drawn.thickness),
        dry=moisture(drawn.season.dry_mc),
        damp=moisture(drawn.season.damp_mc),
    )


def told(judged: Judged, drawn: Drawn) -> Said:
    """The picture of a glued border in words."""
    crack = pick(
        judged.warning,
        [1.0],
        [
            "No crack is drawn, for nothing warns of one.",
            "A crack is drawn where it would start, at the end of the panel in the middle of its width, running along "
            "the grain; the ends of the glue line are marked too.",
        ],
    )
    picture = say(
        "Half a panel from above in its driest month, the border at its right end. The border keeps the end almost as wide "
        "as it was; towards mid-length the panel has become narrower. Shades show the pull across the grain: strongest "
        "along the "
        f"glue line, above all across the middle, and dying away into the panel over about half its width. {_PATH} {{crack}} "
        f"{_SCALE}",
        crack=crack,
    )
    return in_words(picture, drawn)
