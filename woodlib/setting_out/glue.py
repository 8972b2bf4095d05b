"""Glue lines: their area, the glue for them, how many clamps, and what each must press."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from ..errors import Problems
from ..units import both, shown
from ..units.exact import read_exact, read_whole
from .joints import even_row
from .practice import ShopPractice, check_practice

NARROWEST_M = Fraction(5, 1000)  # an edge board narrower than this cannot be clamped, and asks for clamps without end


@dataclass(frozen=True)
class GlueUp:
    """Glue lines that are pressed together in one go.

    ``area_m2`` of all lines; ``glue_kg`` for both faces; ``clamps_m`` where each clamp sits along the lines;
    ``force_n`` that each clamp must give for the practice's pressure on one line (the same force passes through all).
    """

    lines: int
    length_m: Fraction
    area_m2: Fraction
    glue_kg: float
    clamps_m: tuple[Fraction, ...]
    force_n: float

    @property
    def clamps(self) -> int:
        """How many clamps."""
        return len(self.clamps_m)

    @property
    def spacing_m(self) -> Fraction:
        """Between neighbouring clamps, m; 0 for a single clamp."""
        return self.clamps_m[1] - self.clamps_m[0] if self.clamps > 1 else Fraction(0)

    @property
    def says(self) -> str:
        """The glue-up in a sentence, inches first."""
        return self.said()

    def said(self, first: str = "customary") -> str:
        """The glue-up in a sentence, with the system that is written first."""
        if not self.lines:
            return "No glue line: the width comes from one board."
        lines = "1 glue line" if self.lines == 1 else f"{self.lines} glue lines"
        area = area_text(self.area_m2, first)
        apart = f" every {both(self.spacing_m, 16, 1, first=first)}" if self.clamps > 1 else ""
        force = _two(f"{round(self.force_n / 4.4482216152605, -1):.0f} lbf", f"{self.force_n / 1000:.1f} kN", first)
        glue = _two(f"{self.glue_kg / 0.028349523125:.1f} oz", f"{1000 * self.glue_kg:.0f} g", first)
        clamps = f"{self.clamps} clamps{apart}, each giving about {force}, above and below in turn"
        return f"{lines}, {area}, about {glue} of glue; {clamps}."


def _two(customary: str, metric: str, first: str) -> str:
    return f"{customary} ({metric})" if first == "customary" else f"{metric} ({customary})"


def area_text(area_m2: Fraction, first: str = "customary") -> str:
    """An area of glue in words.

    >>> area_text(Fraction(9, 100))
    '0.97 sq ft (0.090 m2)'
    """
    return _two(f"{float(area_m2) / 0.09290304:.2f} sq ft", f"{float(area_m2):.3f} m2", first)


def glue_lines(
    boards: int,
    length: object,
    thickness: object,
    *,
    edge_board_width: object = None,
    practice: ShopPractice | None = None,
) -> GlueUp:
    """Glue lines between boards laid edge to edge, with clamps across.

    ``boards`` number of boards; ``length`` and ``thickness`` of the blank; ``edge_board_width`` of the narrower outer
    board: pressure spreads at 45 degrees (common practice, no source), so clamps sit no further apart than twice that
    width, nor than the practice's spacing. Raises :class:`InputError` with a sentence for each bad input.

    >>> glue = glue_lines(4, "46-1/4 in", "1 in", edge_board_width="5 in")
    >>> glue.clamps, both(glue.spacing_m), round(float(glue.area_m2), 4)
    (7, '7-1/16 in (179 mm)', 0.0895)
    """
    problems = Problems()
    practice = check_practice(problems, practice)
    number = read_whole(problems, "number of boards", boards, 1, 100)
    long, thick = (
        read_exact(problems, "length of the glue line", length),
        read_exact(problems, "thickness", thickness, high=Fraction(1, 2)),
    )
    edge = None
    if edge_board_width is not None:
        edge = read_exact(problems, "width of the edge board", edge_board_width, low=NARROWEST_M, above=False)
    problems.raise_if_any()
    if number == 1:
        return GlueUp(0, long, Fraction(0), 0.0, (), 0.0)
    spacing = practice.clamp_spacing_m if edge is None else min(practice.clamp_spacing_m, 2 * edge)
    places = clamp_places(long, practice.clamp_end_m, spacing)
    line = long * thick
    area, force = (number - 1) * line, float(practice.glue_pressure_pa * line) / len(places)
    return GlueUp(number - 1, long, area, float(area * practice.glue_spread_kg_m2), places, force)


def clamp_places(length_m: Fraction, end_m: Fraction, spacing_m: Fraction) -> tuple[Fraction, ...]:
    """Evenly spaced clamps, mirrored, the outermost ``end_m`` from each end, no more than ``spacing_m`` apart.

    >>> [float(place) for place in clamp_places(Fraction(1), Fraction(1, 20), Fraction(1, 2))]
    [0.05, 0.5, 0.95]
    """
    return even_row(length_m, end_m, spacing_m)


def area_of_lines_m2(lines: Sequence[tuple[object, object]]) -> Fraction:
    """Area of glue lines of any kind, each as (length, width), exact, m2.

    >>> float(area_of_lines_m2([("1 m", "20 mm"), ("500 mm", "2 cm")]))
    0.03
    """
    problems = Problems()
    total = Fraction(0)
    for number, line in enumerate(lines if isinstance(lines, list | tuple) else [lines], start=1):
        if not isinstance(line, list | tuple) or len(line) != 2:
            problems.add(f"glue line {number} is {shown(line)}; write a pair such as ('44 in', '7/8 in').")
            continue
        long, wide = (
            read_exact(problems, f"{entry} of glue line {number}", value)
            for entry, value in zip(("length", "width"), line, strict=True)
        )
        total += long * wide
    problems.raise_if_any()
    return total
