"""The blank from the finished size: along, across and through, with kerfs, trims, planing and flattening."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from ..errors import Problems
from ..units import both
from ..units.exact import Rounding, check_rule, read_exact
from .continuity import GrainRun, run_of
from .division import Division, Part, with_waste
from .practice import ShopPractice, check_practice


@dataclass(frozen=True)
class Blank:
    """What to glue up or to cut first: three divisions, each adding up exactly to the blank.

    ``run`` the length with its numbered pieces; ``width`` and ``thickness`` divisions; ``roundings`` of length and
    width, brought up to the rule; the thickness is the least that a rough board must have.
    """

    run: GrainRun
    width: Division
    thickness: Division
    roundings: tuple[Rounding, ...]

    @property
    def length(self) -> Division:
        """The blank along the grain."""
        return self.run.division

    @property
    def finished_thickness_m(self) -> Fraction:
        """Thickness of the finished piece, m."""
        return self.thickness.pieces[0].size_m

    @property
    def finished_width_m(self) -> Fraction:
        """Width of the finished piece, m."""
        return self.width.pieces[0].size_m

    @property
    def volume_m3(self) -> Fraction:
        """Volume of the blank, m3."""
        return self.length.total_m * self.width.total_m * self.thickness.total_m

    @property
    def finished_volume_m3(self) -> Fraction:
        """Volume of all its pieces when finished, m3."""
        along = sum((part.size_m for part in self.length.pieces), Fraction(0))
        return along * self.finished_width_m * self.finished_thickness_m

    def text(self, first: str = "customary") -> str:
        """The blank's size in words, rounded up.

        >>> blank_for("44 in", "20 in", "7/8 in").text()
        '46-1/4 in (1175 mm) long, 20-3/4 in (527 mm) wide, at least 15/16 in (24 mm) thick'
        """
        long, wide, thick = (
            both(d.total_m, rounding="up", first=first) for d in (self.length, self.width, self.thickness)
        )
        return f"{long} long, {wide} wide, at least {thick} thick"


def blank_for(
    length: object,
    width: object,
    thickness: object,
    *,
    end_pieces: object = None,
    out_of_flat: object = 0,
    rule: str = "1/16 in",
    practice: ShopPractice | None = None,
) -> Blank:
    """The blank for a panel, with its end pieces cut from the same blank where they are wanted.

    Parameters
    ----------
    length, width, thickness : finished sizes of the panel; text, quantity, exact fraction or metres
    end_pieces : length along the grain of a piece cut off at each end, or None
    out_of_flat : height between the highest and lowest point of the glued or rough face, as
        ``moisture.readiness.out_of_flat_m`` gives it from cup, bow and twist; both faces together lose it
    rule : rule that length and width are marked with, rounded up
    practice : kerf, trims and planing

    Raises :class:`InputError` with a sentence for each bad input.

    >>> blank_for("44 in", "20 in", "7/8 in", end_pieces="2 in", out_of_flat="1 mm").thickness.adds_up()
    '2 x flattening 0.5 mm + 2 x planing 0.79375 mm + panel 22.225 mm = 24.8125 mm'
    """
    problems = Problems()
    practice = check_practice(problems, practice)
    check_rule(problems, rule)
    long, wide = read_exact(problems, "finished length", length), read_exact(problems, "finished width", width)
    thick = read_exact(problems, "finished thickness", thickness, high=Fraction(1, 2))
    ends = None if end_pieces is None else read_exact(problems, "end pieces", end_pieces)
    warp = read_exact(problems, "out of flat", out_of_flat, high=Fraction(1, 10), above=False)
    problems.raise_if_any()
    named = [("panel", long)] if ends is None else [("left end", ends), ("panel", long), ("right end", ends)]
    run = run_of(named, practice, rule)
    edge = [Part("trim", "trim", practice.edge_trim_m), Part("kerf", "kerf", practice.saw_kerf_m)]
    across, across_rounding = with_waste("width", [Part("panel", "piece", wide, 1)], edge, rule)
    faces = [Part("flattening", "flattening", warp / 2), Part("planing", "planing", practice.face_planing_m)]
    through, _ = with_waste("thickness", [Part("panel", "piece", thick, 1)], faces, None)
    return Blank(run, across, through, _there(run.rounding, across_rounding))


def strip_blank(
    name: str,
    sizes: tuple[Fraction, Fraction, Fraction],
    *,
    turned: bool = False,
    out_of_flat_m: Fraction = Fraction(0),
    rule: str = "1/16 in",
    practice: ShopPractice | None = None,
) -> Blank:
    """The blank for a part that comes from one board, from finished length, width and thickness, exact metres.

    Both edges are jointed and one kerf parts it from the board; a turned part is a square with the shop's allowance.

    >>> inch = Fraction(254, 10_000)
    >>> strip_blank("rail", (18 * inch, 2 * inch, inch * 7 / 8)).width.adds_up()
    '2 x jointing 0.79375 mm + rail 50.8 mm + kerf 3.175 mm = 55.5625 mm'
    """
    practice = practice or ShopPractice()
    long, wide, thick = sizes
    run = run_of([(name, long)], practice, rule)
    piece = [Part(name, "piece", size, 1) for size in (wide, thick)]
    if turned:
        square = Part("turning", "turning", practice.turning_allowance_m)
        divisions = [
            _rounded(way, [part, square], rule) for way, part in zip(("width", "thickness"), piece, strict=True)
        ]
        return Blank(run, divisions[0][0], divisions[1][0], _there(run.rounding, divisions[0][1]))
    edge, kerf = Part("jointing", "jointing", practice.edge_jointing_m), Part("kerf", "kerf", practice.saw_kerf_m)
    across, across_rounding = _rounded("width", [edge, piece[0], edge, kerf], rule)
    faces = [Part("flattening", "flattening", out_of_flat_m / 2), Part("planing", "planing", practice.face_planing_m)]
    through, _ = with_waste("thickness", [piece[1]], faces, None)
    return Blank(run, across, through, _there(run.rounding, across_rounding))


def _there(*roundings: Rounding | None) -> tuple[Rounding, ...]:
    return tuple(rounding for rounding in roundings if rounding is not None)


def _rounded(direction: str, parts: list[Part], rule: str) -> tuple[Division, Rounding]:
    """A division brought up to a rule by a spare at its end."""
    rounding = Rounding(sum((part.size_m for part in parts), Fraction(0)), rule, "up")
    spare = [Part("spare", "spare", rounding.error_m)] if rounding.error_m else []
    return Division(direction, (*parts, *spare)), rounding
