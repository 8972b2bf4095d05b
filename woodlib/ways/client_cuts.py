"""The cut through the place that opens, for each kind of view, true to its proportions."""

from __future__ import annotations

from ..picture.scene import Area, Line, Mark, Window, Words, corners
from ..words.decided import Pick
from ..words.say import Said
from .client_parts import (
    CUT_TALL,
    CUT_TOP,
    HALF,
    LETTERS,
    SIZE_Y,
    Seen,
    end_grain,
    rail_from_above,
    sized,
    slab,
)


def framed_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """Stile, groove and tongue: the line opens and shuts, the tongue stays in its groove."""
    px, middle = seen.cut_px, CUT_TOP + 0.5 * CUT_TALL
    face = left + 0.5 * HALF - 6.0
    line = seen.line * px
    stile = slab(seen, left + 2, face, seen.border_thickness)
    marks = end_grain(seen, stile, face - 0.5 * seen.border * px, "border-wood", turned=True)
    thin, deep = seen.border_thickness * px / 6.0, min(0.4 * seen.border * px, 0.45 * HALF)
    marks += [Area(corners(face - deep, middle - thin - 1, face + 1, middle + thin + 1), "gap")]
    marks += [
        Line(
            [
                (face, middle - thin - 1),
                (face - deep, middle - thin - 1),
                (face - deep, middle + thin + 1),
                (face, middle + thin + 1),
            ],
            "edge",
            1.2,
        )
    ]
    tongue = corners(face + line - 0.85 * deep, middle - thin, face + line + 2, middle + thin)
    panel = slab(seen, face + line, left + HALF - 2, min(seen.thickness, seen.border_thickness))
    whole = [
        tongue[0],
        (face + line, middle - thin),
        panel[0],
        panel[1],
        panel[2],
        panel[3],
        (face + line, middle + thin),
        tongue[3],
    ]
    marks += end_grain(seen, whole, face + line + 0.05 * px)
    return [*marks, *sized(left, face, face + line, text)]


def step_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """The corner from above: the panel's edge and the end piece, and the step between them."""
    px = seen.cut_px
    edge = left + 0.62 * HALF
    step = seen.line * px * (1.0 if seen.goes >= 0.0 else -1.0)
    seam = CUT_TOP + 0.5 * CUT_TALL
    panel = corners(left + 2, CUT_TOP, edge + step, seam)
    end = corners(left + 2, seam, edge, CUT_TOP + CUT_TALL)
    up = [Line([(x, CUT_TOP), (x + 1, seam)], "late-wood", 0.8) for x in (left + 2 + 14.0 * k for k in range(1, 12))]
    marks: list[Mark] = [
        Area(panel, "grid" if seen.painted else "wood"),
        Window(panel, () if seen.painted else tuple(up)),
    ]
    marks += [Line([*panel, panel[0]], "edge", 1.4), *rail_from_above(seen, end)]
    return [*marks, *sized(left, min(edge, edge + step), max(edge, edge + step), text)]


def overhang_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """The edge of the panel and what carries it below: it slides, and nothing opens."""
    px = seen.cut_px * 0.6
    edge = left + 0.66 * HALF
    now = edge + seen.goes * 0.5 * seen.width * px
    low = CUT_TOP + 0.55 * CUT_TALL
    panel = corners(left + 2, low - min(seen.thickness * px, 0.5 * CUT_TALL), now, low)
    carrier = corners(left + 2, low, edge - 10.0, low + 0.4 * CUT_TALL)
    marks = end_grain(seen, panel, left + 0.4 * HALF)
    marks += rail_from_above(seen, carrier)
    marks += [Line([(edge, CUT_TOP - 2), (edge, low + 8)], "quiet", 1.0, "2 3")]
    return [*marks, *sized(left, min(edge, now), max(edge, now), text)]


def opening_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """The free edge of a part and what stands beside it."""
    face = left + 0.6 * HALF
    part = slab(seen, left + 2, face - seen.line * seen.cut_px, seen.thickness)
    beside = slab(seen, face, left + HALF - 2, max(seen.border_thickness, seen.thickness))
    marks = end_grain(seen, part, left + 0.3 * HALF)
    marks += end_grain(seen, beside, face + 0.03 * seen.cut_px, "border-wood", turned=True)
    return [*marks, *sized(left, face - seen.line * seen.cut_px, face, text)]


def boards_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """Two boards that overlap, and the line between them."""
    px, line = seen.cut_px, seen.line * seen.cut_px
    middle, y = left + 0.5 * HALF, CUT_TOP + 0.5 * CUT_TALL
    half, lap = 0.5 * seen.thickness * px, 0.012 * px
    first = [
        (left + 2, y - half),
        (middle, y - half),
        (middle, y),
        (middle + lap, y),
        (middle + lap, y + half),
        (left + 2, y + half),
    ]
    begin = middle + line
    second = [
        (begin, y - half),
        (left + HALF - 2, y - half),
        (left + HALF - 2, y + half),
        (begin + lap, y + half),
        (begin + lap, y + 0.5),
        (begin, y + 0.5),
    ]
    marks = [
        *end_grain(seen, first, left + 0.25 * HALF),
        *end_grain(seen, second, left + 0.8 * HALF, "border-wood", turned=True),
    ]
    return [*marks, *sized(left, middle, begin, text)]


def round_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """The wall of the ring, the line, and the round."""
    return opening_cut(seen, left, text)


def still_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """A sheet with its edging: nothing to measure."""
    joint = left + 0.6 * HALF
    sheet = slab(seen, left + 2, joint, seen.thickness)
    plies = [
        Line([(left, y), (joint, y)], "late-wood", 1.0) for y in (CUT_TOP + CUT_TALL * k / 8.0 for k in range(1, 8))
    ]
    marks: list[Mark] = [Area(sheet, "grid"), Window(sheet, tuple(plies)), Line([*sheet, sheet[0]], "edge", 1.6)]
    edging = slab(seen, joint, min(joint + seen.border * seen.cut_px, left + HALF - 2), seen.thickness)
    marks += end_grain(seen, edging, joint + 0.5 * seen.border * seen.cut_px, "border-wood", turned=True)
    return [*marks, Words(left + 0.5 * HALF, SIZE_Y + 13.0, text, "ink", LETTERS)]
