"""From a brief and a verdict to the parts of the piece, whichever way it is built."""

from __future__ import annotations

from ..brief import Brief
from ..errors import InputError, Problems
from ..units import exact_metres
from ..units.exact import fine_text
from ..ways.given import Given
from ..ways.made import TYPED, MadePiece, Size
from ..ways.verdict import Verdict
from .practice import ShopPractice

SAME_M = 1e-6  # a verdict worked out in floats for the sizes of a brief agrees with them far closer than this


def made_by(brief: Brief, verdict: Verdict, practice: ShopPractice) -> MadePiece:
    """The parts of the piece of a brief, built as a verdict says.

    Raises :class:`InputError` where the verdict is for another piece, or where a part would have no size.

    >>> from woodlib.commission import chosen_brief, commission_of
    >>> seat = commission_of(chosen_brief(), "frame_panel")
    >>> piece = made_by(seat.brief, seat.built, ShopPractice())
    >>> [(part.name, part.count) for part in piece.parts]
    [('panel', 1), ('stile', 2), ('rail', 2)]
    >>> piece.sums[0].says
    'across the grain: 2 x stile 50.8 mm + panel 422.275 mm - 2 x panel in a groove 7.9375 mm = 508 mm'
    """
    piece = verdict.way.make(given_of(brief, verdict, practice))
    problems = Problems()
    for part in piece.parts:
        for name, size in zip(("length", "width", "thickness"), part.sizes, strict=True):
            if size.exact_m <= 0:
                problems.add(
                    f"{brief.where('piece')}the {part.name} of {verdict.way.built_as} would have a {name} of "
                    f"{fine_text(size.exact_m, brief.first)} ({size.comes_from}); make the piece larger or the border narrower, "
                    "or choose another way to build."
                )
    problems.raise_if_any()
    return piece


def given_of(brief: Brief, verdict: Verdict, practice: ShopPractice) -> Given:
    """The sizes of a brief beside a verdict on it; raises :class:`InputError` where the two do not belong together."""
    length, width, thickness = (_typed(brief, entry) for entry in ("length", "width", "thickness"))
    border = _border(brief, verdict)
    _check_same(brief, verdict, {"width": width, "length": length, "border_width": border})
    joined = brief.joins
    border_thickness = (
        thickness if joined is None else Size(joined[0], TYPED if joined[1].startswith("piece.") else joined[1])
    )
    return Given(
        length,
        width,
        thickness,
        border,
        border_thickness,
        verdict,
        brief.first,
        min(practice.tenon_length_m, practice.tenon_share * border.exact_m),
        (practice.clamp_end_m, practice.clamp_spacing_m),
        (practice.batten_end_m, practice.batten_spacing_m),
    )


def _typed(brief: Brief, entry: str) -> Size:
    return Size(brief.exact_m(f"piece.{entry}"), TYPED)


def _border(brief: Brief, verdict: Verdict) -> Size:
    """The border of the brief; where it asks for none, the usual width that the verdict was worked out with."""
    if "piece.border_width" in brief.typed:
        return _typed(brief, "border_width")
    usual = exact_metres(round(verdict.quantities["border"], 9), default_unit="meter", name="border")
    return Size(usual, "usual width, as the brief gives no border")


def _check_same(brief: Brief, verdict: Verdict, sizes: dict[str, Size]) -> None:
    worked = {"width": "finished_width", "length": "finished_length", "border_width": "border"}
    for entry, size in sizes.items():
        other = verdict.quantities[worked[entry]]
        if abs(other - float(size.exact_m)) > SAME_M:
            raise InputError(
                f"{brief.where(f'piece.{entry}')}the verdict is for a piece whose {entry.replace('_', ' ')} is "
                f"{fine_text(other, brief.first)}, but the brief's is {fine_text(size.exact_m, brief.first)}; judge this brief's piece "
                "and set out from that verdict."
            )
