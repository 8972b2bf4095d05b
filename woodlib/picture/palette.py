"""Colours and line widths by role: one palette for every picture, live, frozen and printed.

A picture never names a colour; it names what the thing is (``wood``, ``damp``, ``stop``). Each role has a colour
for light paper and one for a dark page. Roles that carry a judgement (``fine``, ``watch``, ``stop``) also have a
hatch, so that nobody needs to tell the hues apart, and differ in lightness, so that a grey print keeps them.
The contrast of text and line roles with both papers is checked in the tests (WCAG 2.2: 4.5 for text, 3 for marks), and that
roles which stand beside each other stay apart for eyes that lack one kind of cone.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Role:
    """How one kind of thing looks: colour on light paper, colour on a dark page, hatch spacing in px (0: none)."""

    light: str
    dark: str
    hatch: float = 0.0
    hatch_turn: float = 45.0
    opacity: float = 1.0
    bare: bool = False  # stripes alone: what lies below shows between them


ROLES: dict[str, Role] = {
    # paper and writing
    "paper": Role("#ffffff", "#15191c"),
    "ink": Role("#1d2429", "#eef1f2"),
    "quiet": Role("#56616a", "#a9b4bb"),
    "grid": Role("#d5dade", "#343c42"),
    # wood
    "wood": Role("#efe0c4", "#6b5335"),
    "wood-end": Role("#e2cda5", "#7d6240"),
    "late-wood": Role("#8f6b39", "#dcc090"),
    "border-wood": Role("#cfae7c", "#9a7748"),
    "edge": Role("#54391a", "#f0dcb8"),
    "split": Role("#20160d", "#080503"),
    "shadow": Role("#94703f", "#2c2014"),
    "ghost": Role("#7a8790", "#8d9aa3"),
    # air and moisture
    "dry": Role("#a4500f", "#f0a263"),
    "damp": Role("#1f5f93", "#7fb8e6"),
    "today": Role("#47197a", "#c78fff"),
    "range": Role("#1f5f93", "#7fb8e6", opacity=0.22),
    "metal": Role("#6d7880", "#b9c3c9"),
    "glue": Role("#8c1d4f", "#f08fb8"),
    "gap": Role("#ffffff", "#0c0f11"),
    # what somebody said before seeing
    "said": Role("#b8005f", "#ff3f98"),
    # judgement
    "fine": Role("#2c7a66", "#86d7bf"),
    "watch": Role("#775600", "#e8c256", hatch=7.0),
    "stop": Role("#8e1b2c", "#ff8f9c", hatch=4.0, hatch_turn=-45.0),
    # five steps of stress across the grain, squeezed to pulled apart
    "squeezed": Role("#bcd9ea", "#27485c"),
    "at-rest": Role("#f3efe4", "#3a3a36"),
    "pull-1": Role("#f3d9a2", "#5a4416"),
    "pull-2": Role("#e5a86b", "#975c20"),
    "pull-3": Role("#c2603f", "#e6784c"),
    "pulled-hard": Role("#775600", "#e8c256", hatch=9.0, bare=True),
    "past-limit": Role("#8e1b2c", "#ff8f9c", hatch=5.0, hatch_turn=-45.0, bare=True),
    "pull-4": Role("#8e1b2c", "#ff8f9c", hatch=4.0, hatch_turn=-45.0),
}


def _luminance(colour: str) -> float:
    channels = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(first: str, second: str) -> float:
    """Contrast ratio of two colours, 1 to 21.

    Source: WCAG 2.2, definition of contrast ratio and relative luminance.

    >>> round(contrast("#000000", "#ffffff"), 1)
    21.0
    """
    bright, dim = sorted((_luminance(first), _luminance(second)), reverse=True)
    return (bright + 0.05) / (dim + 0.05)


def style_sheet() -> str:
    """CSS for every role: ``a-role`` fills an area, ``l-role`` strokes a line, ``w-role`` colours words."""
    light = "".join(f"--w-{name}:{role.light};" for name, role in ROLES.items())
    dark = "".join(f"--w-{name}:{role.dark};" for name, role in ROLES.items())
    rules = []
    for name, role in ROLES.items():
        opacity = f";fill-opacity:{role.opacity:g}" if role.opacity < 1 else ""
        fill = f"url(#h-{name})" if role.hatch else f"var(--w-{name})"
        rules.append(
            f".a-{name}{{fill:{fill}{opacity}}}.l-{name}{{stroke:var(--w-{name})}}.w-{name}{{fill:var(--w-{name})}}"
        )
    return (
        f".wl{{{light}}}"
        f"@media (prefers-color-scheme:dark){{.wl{{{dark}}}}}"
        f"@media print{{.wl{{{light}}}}}"
        f"[data-jp-theme-light=true] .wl{{{light}}}[data-jp-theme-light=false] .wl{{{dark}}}"
        ".wl text{font-family:system-ui,'Segoe UI',Roboto,'DejaVu Sans',sans-serif;"
        "font-size:calc(var(--f)*var(--text-scale,1));stroke:none}"
        ".wl .l{fill:none;stroke-linejoin:round;stroke-linecap:round}.wl .off{display:none}" + "".join(rules)
    )


def hatches() -> str:
    """SVG pattern definitions of the hatched roles: the role's colour with stripes of paper."""
    patterns = []
    for name, role in ROLES.items():
        if role.hatch:
            size = role.hatch
            ground = "" if role.bare else f'<rect width="{size:g}" height="{size:g}" style="fill:var(--w-{name})"/>'
            stripe = name if role.bare else "paper"
            patterns.append(
                f'<pattern id="h-{name}" width="{size:g}" height="{size:g}" patternUnits="userSpaceOnUse" '
                f'patternTransform="rotate({role.hatch_turn:g})">{ground}'
                f'<rect width="{1.6 if role.bare else 1.2}" height="{size:g}" style="fill:var(--w-{stripe})"/></pattern>'
            )
    return "<defs>" + "".join(patterns) + "</defs>"
