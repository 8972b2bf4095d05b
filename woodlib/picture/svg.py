"""Write a picture as SVG text: the one drawing that the notebook, the handout and the printed page all show.

Every mark becomes one element, in drawing order, so that a page script can find mark number k. Colours come from
the role classes of :mod:`woodlib.picture.palette`.
"""

from __future__ import annotations

from base64 import b64encode
from html import escape
from itertools import count

from ..words.decided import chosen
from ..words.say import plain_text
from .palette import hatches, style_sheet
from .scene import Area, Circle, Line, Mark, Picture, Words, flatten_points


def _number(value) -> str:
    text = f"{float(value):.1f}"
    return text[:-2] if text.endswith(".0") else text


def path_data(points: object, closed: bool) -> str:
    """The ``d`` of a path through points, to a tenth of a px."""
    flat = [_number(value) for value in flatten_points(points)]
    pairs = " ".join(f"{x},{y}" for x, y in zip(flat[::2], flat[1::2], strict=True))
    return f"M{pairs}" + ("Z" if closed else "")


def _class(kind: str, mark) -> str:
    hidden = "" if chosen(getattr(mark, "shown", True)) else " off"
    return f"{kind}-{chosen(mark.role)}{hidden}"


def _element(mark: Mark, units: str, clip: str, numbers) -> str:
    if isinstance(mark, Line):
        dash = f' stroke-dasharray="{mark.dash}"' if mark.dash else ""
        return f'<path class="l {_class("l", mark)}" stroke-width="{mark.width:g}"{dash} d="{path_data(mark.points, False)}"/>'
    if isinstance(mark, Area):
        return f'<path class="{_class("a", mark)}" d="{path_data(mark.points, True)}"/>'
    if isinstance(mark, Circle):
        kind = _class("a", mark) if mark.filled else "l " + _class("l", mark)
        width = "" if mark.filled else f' stroke-width="{mark.width:g}"'
        return (
            f'<circle class="{kind}"{width} cx="{_number(mark.x)}" cy="{_number(mark.y)}" r="{_number(mark.radius)}"/>'
        )
    if isinstance(mark, Words):
        bold = ' font-weight="600"' if mark.bold else ""
        x, y = _number(mark.x), _number(mark.y)
        turn = f' transform="rotate({-mark.turn:g} {x} {y})"' if mark.turn else ""
        return (
            f'<text class="{_class("w", mark)}" x="{x}" y="{y}" style="--f:{mark.size:g}px" '
            f'text-anchor="{mark.anchor}"{bold}{turn}>{escape(plain_text(mark.text, units))}</text>'
        )
    name = f"{clip}-{next(numbers)}"
    inside = "".join(_element(inner, units, clip, numbers) for inner in mark.marks)
    return (
        f'<g><clipPath id="{name}"><path d="{path_data(mark.points, True)}"/></clipPath>'
        f'<g clip-path="url(#{name})">{inside}</g></g>'
    )


def svg_body(picture: Picture, units: str = "both", clip: str = "clip") -> str:
    """The marks of a picture as SVG elements, without the outer tag; names of clip outlines begin with ``clip``."""
    numbers = count()
    return "".join(_element(mark, units, clip, numbers) for mark in picture.marks)


def svg(
    picture: Picture,
    description: str,
    units: str = "both",
    name: str = "picture",
    styled: bool = True,
    true_size: bool = False,
    hatched: bool = True,
) -> str:
    """A whole SVG drawing with title and description.

    ``name`` makes its inner names unique on a page; ``styled=False`` leaves the style to the page around it;
    ``true_size`` gives it its size on paper, so that it prints to scale; ``hatched=False`` leaves the hatches to the page,
    which has them once.
    """
    width, height = (side * 25.4 / 96 for side in (picture.width, picture.height))
    wide = (
        f'width="{width:.2f}mm" height="{height:.2f}mm"'
        if true_size
        else f'style="width:100%;max-width:{picture.width:g}px;height:auto"'
    )
    style = f"<style>{style_sheet()}</style>" if styled else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="wl" viewBox="0 0 {picture.width:g} {picture.height:g}" '
        f'role="img" aria-labelledby="{name}-title" aria-describedby="{name}-words" '
        f"{wide}>"
        f'<title id="{name}-title">{escape(picture.title)}</title><desc id="{name}-words">{escape(description)}</desc>'
        f'{style}{hatches() if hatched else ""}<rect class="a-paper" width="{picture.width:g}" height="{picture.height:g}"/>'
        f'<g data-marks="">{svg_body(picture, units, name)}</g></svg>'
    )


def picture_address(picture: Picture, description: str, units: str = "both") -> str:
    """The drawing as a ``data:`` address for an ``<img>``: a still that every viewer shows, trusted or not."""
    return "data:image/svg+xml;base64," + b64encode(svg(picture, description, units).encode()).decode()
