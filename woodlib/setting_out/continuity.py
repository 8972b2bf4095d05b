"""Pieces cut one after another from one blank, so that the grain runs on round the corners."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from ..errors import Problems
from ..units import shown
from ..units.exact import Rounding, check_rule, exact_text, fine_text, read_exact, read_name
from .division import Division, Part, with_waste
from .practice import ShopPractice, check_practice

CORNERS = ("butt", "mitre")
MITRE_WIDTH = Fraction(99, 70)
"""On the face a kerf tilted to 45 degrees is wider by the square root of 2; 99/70 is that, 0.005 percent up."""

MOST_PIECES = 40


@dataclass(frozen=True)
class Corner:
    """Where two neighbours of the blank meet again: by how much the figure jumps, or that it does not run on at all."""

    pieces: tuple[int, int]
    jump_m: Fraction | None

    @property
    def continues(self) -> bool:
        """Whether the two were neighbours in the blank."""
        return self.jump_m is not None

    def said(self, first: str = "customary") -> str:
        """What the maker sees at this corner."""
        one, other = self.pieces
        if self.jump_m is None:
            return f"{one} to {other}: the grain does not run on here; put this corner at the back."
        return f"{one} to {other}: the grain runs on, less the kerf of {fine_text(self.jump_m, first)}."


@dataclass(frozen=True)
class GrainRun:
    """Numbered pieces along one blank, with the corners where they meet again.

    ``division`` the blank along the grain; ``rounding`` how its length was brought up to the rule; ``mark_with`` what
    to write on the show face of each piece before the first cut.
    """

    division: Division
    rounding: Rounding | None
    corners: tuple[Corner, ...]
    mark_with: tuple[str, ...]

    @property
    def length_m(self) -> Fraction:
        """Length of the blank, m."""
        return self.division.total_m


def grain_run(
    pieces: Sequence[tuple[str, object]],
    *,
    corner: str = "butt",
    closes: bool = False,
    rule: str = "1/16 in",
    practice: ShopPractice | None = None,
) -> GrainRun:
    """The blank for pieces whose grain runs on from one to the next.

    Parameters
    ----------
    pieces : sequence of (name, length)
        In the order in which they meet; the length of each on its show face, along the grain.
    corner : "butt" or "mitre"
        How they meet; a mitre's kerf is wider on the face.
    closes : bool
        Whether the last meets the first again, as in a box.
    rule : str
        Rule that the blank is marked with; its length is rounded up.
    practice : ShopPractice, optional
        Kerf and trim.

    Raises :class:`InputError` with a sentence for each bad input.

    >>> run = grain_run([("left end", "2 in"), ("panel", "44 in"), ("right end", "2 in")])
    >>> run.division.adds_up()
    '2 x trim 25.4 mm + 4 x kerf 3.175 mm + left end 50.8 mm + panel 1117.6 mm + right end 50.8 mm = 1282.7 mm'
    >>> run.mark_with, run.corners[0].said()
    (('1 >', '2 >', '3 >'), '1 to 2: the grain runs on, less the kerf of 1/8 in (3.2 mm).')
    """
    problems = Problems()
    practice = check_practice(problems, practice)
    check_rule(problems, rule)
    if corner not in CORNERS:
        problems.add(f"corner is {shown(corner)}; it must be butt or mitre.")
    named = _read_pieces(problems, pieces)
    if closes and len(named) < 3:
        problems.add(f"pieces are {len(named)}, which cannot close a ring; give three or more, or closes=False.")
    problems.raise_if_any()
    return run_of(named, practice, rule, corner, closes)


def run_of(
    named: Sequence[tuple[str, Fraction]],
    practice: ShopPractice,
    rule: str | None,
    corner: str = "butt",
    closes: bool = False,
) -> GrainRun:
    """The same from lengths that are exact and checked already."""
    loss = practice.saw_kerf_m * (MITRE_WIDTH if corner == "mitre" else 1)
    kerf = Part("kerf" if corner == "butt" else "tilted kerf", "kerf", loss)
    inside: list[Part] = []
    for number, (name, length) in enumerate(named, start=1):
        inside += [Part(name, "piece", length, number), kerf]
    waste = [Part("trim", "trim", practice.end_trim_m), kerf]
    division, rounding = with_waste("length", inside[:-1], waste, rule)
    count = len(named)
    corners = [Corner((number, number + 1), loss) for number in range(1, count)]
    if closes:
        corners.append(Corner((count, 1), None))
    return GrainRun(division, rounding, tuple(corners), tuple(f"{number} >" for number in range(1, count + 1)))


def _read_pieces(problems: Problems, pieces: object) -> list[tuple[str, Fraction]]:
    listed = list(pieces) if isinstance(pieces, list | tuple) else []
    if not 1 <= len(listed) <= MOST_PIECES or not all(
        isinstance(piece, list | tuple) and len(piece) == 2 for piece in listed
    ):
        problems.add(f"pieces is {shown(pieces)}; write a list of 1 to {MOST_PIECES} pairs such as ('panel', '44 in').")
        return []
    read = [
        (
            read_name(problems, f"name of piece {number}", name),
            read_exact(problems, f"length of piece {number}", length),
        )
        for number, (name, length) in enumerate(listed, start=1)
    ]
    return [(name, length) for name, length in read if name and length]


def lost_between(run: GrainRun) -> str:
    """All that the saw takes between the first and the last piece, in words.

    >>> lost_between(grain_run([("side", "300 mm"), ("end", "200 mm")]))
    '3.175 mm of figure is lost between piece 1 and piece 2'
    """
    lost = sum((corner.jump_m for corner in run.corners if corner.jump_m is not None), Fraction(0))
    return f"{exact_text(lost)} of figure is lost between piece 1 and piece {len(run.mark_with)}"
