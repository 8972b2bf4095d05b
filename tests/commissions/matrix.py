"""Briefs nobody tuned for: every kind of piece, narrow, usual and widest, in inches and millimetres, in three houses.

All of them are invented. Widths are those of real furniture of the kind (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

# kind: widths narrow, usual and widest, length, thickness, border width (0 none), border thickness, all in eighths of an inch
PIECES = {
    "lid": ((72, 144, 200), 288, 6, 20, 6),
    "seat": ((88, 128, 192), 352, 7, 16, 7),
    "table top": ((144, 288, 336), 672, 8, 28, 8),
    "door panel": ((96, 176, 196), 624, 7, 20, 7),
    "board": ((48, 88, 128), 160, 6, 12, 6),
    "frame": ((80, 128, 224), 240, 6, 16, 6),
    "back": ((120, 224, 288), 480, 4, 16, 6),
    "drawer front": ((24, 48, 96), 160, 6, 0, 4),
    "drawer side": ((24, 48, 96), 144, 4, 0, 4),
    "drawer bottom": ((96, 144, 192), 160, 3, 0, 4),
    "turned part": ((6, 12, 28), 80, 12, 2, 2),
}
HOUSES = {
    "dry winters": ((68, 22), (70, 40), (76, 60), (70, 46)),
    "damp coast": ((66, 60), (66, 62), (72, 70), (68, 68)),
    "held steady": ((68, 42), (70, 45), (74, 50), (70, 46)),
}
WOODS = ("white oak", "black walnut", "black cherry", "white ash", "yellow-poplar", "sugar maple")
UNITS = ("inches", "millimetres")
SIZES = ("narrow", "usual", "widest")


def matrix() -> Iterator[tuple[str, str]]:
    """Name and text of every brief of the matrix."""
    for number, (kind, size, units, house) in enumerate(product(PIECES, range(3), UNITS, HOUSES)):
        wood = WOODS[(number + number // 7) % len(WOODS)]
        yield f"{kind}, {SIZES[size]}, {units}, {house}", brief_text(kind, size, units, house, wood)


def brief_text(kind: str, size: int, units: str, house: str, wood: str) -> str:
    """One brief as a person would type it."""
    widths, length, thickness, border, border_thickness = PIECES[kind]
    lines = [
        "# INVENTED for a test: no such client, house or commission exists.",
        f'title = "{kind[0].upper()}{kind[1:]} for a test"',
        f'units = "{units}"',
        "[piece]",
        f'kind = "{kind}"',
        f'width = "{_length(widths[size], units)}"',
        f'length = "{_length(length, units)}"',
        f'thickness = "{_length(widths[size] if kind == "turned part" else thickness, units)}"',
    ]
    if border:
        lines.append(f'border_width = "{_length(border, units)}"')
        lines.append(f'border_thickness = "{_length(border_thickness, units)}"')
    lines += ["[wood]", f'species = "{wood}"', 'moisture = "8 %"', 'built_in = "October"']
    for season, (temperature, humidity) in zip(("winter", "spring", "summer", "autumn"), HOUSES[house], strict=True):
        lines += [f"[house.seasons.{season}]", f'temperature = "{temperature} degF"', f'humidity = "{humidity} %"']
    return "\n".join(lines) + "\n"


def _length(eighths: int, units: str) -> str:
    """A size as the shop writes it: inches and eighths, or whole millimetres to a 5 from 50 mm up."""
    if units == "inches":
        whole, part = divmod(eighths, 8)
        fraction = {0: "", 4: "1/2", 2: "1/4", 6: "3/4"}.get(part, f"{part}/8")
        return f"{whole}-{fraction} in" if whole and fraction else f"{fraction or whole} in"
    mm = eighths * 3.175
    return f"{5 * round(mm / 5):.0f} mm" if mm >= 50 else f"{round(mm):.0f} mm"
