"""The care of a piece told to its client: the humidity it is made for, what to expect in each season, when to call."""

from __future__ import annotations

from .card import Card, heading, joined, listed, paragraphs, told
from .judged import Commission
from .margin import safe_humidity_percent
from .seasons import about, airs_of, months_of, outside_m


def care_note(commission: Commission) -> Card:
    """For the client: the humidity to keep, what to expect in each season, when to call."""
    built, months = commission.built, months_of(commission)
    judged = built.judged
    driest, dampest = airs_of(commission)
    lines = []
    for way, month in (("narrowing", months[0]), ("widening", months[1])):
        lead = told(judged.against_today(way), commission.first)
        verb = "" if built.way.holds_width else "is "
        lines.append(
            f"Around {month} the {built.way.part} {verb}{lead}: {told(judged.month(way), commission.first)}. "
            f"{_NORMAL[built.allowed]}"
        )
    room = built.cut("space_beside").text(commission.first) if built.way.framed else ""
    expected = built.way.expect.format(
        month=months[0], outside=about(outside_m(commission), commission.first), room=room
    )
    lines += [expected] if expected else []
    low, high = safe_humidity_percent(commission)
    keep = (
        f"The piece is made for air between {driest} and {dampest}. A hygrometer in the room costs little and "
        f"tells you where "
        "you are. The less the air swings, the less the wood moves; steady air near the middle of that range is "
        "kindest."
    )
    call = [
        f"if the room stays below {low} % RH or above {high} % RH for more than a month{_why_these(commission)};",
        f"if a line opens {built.way.watch} that you can slide a sheet of paper into;",
        "if something that used to move freely binds, or the panel bows.",
    ]
    care = [
        "Keep it out of direct sun and away from heaters, stoves and air vents.",
        "Wipe up water at once; clean with a damp cloth, never a wet one.",
        *_OF_KIND.get(commission.brief.piece.kind, ()),
    ]
    return joined(
        paragraphs(keep),
        heading("What to expect"),
        listed(lines),
        heading("Looking after it"),
        listed(care),
        heading("When to call us"),
        listed(call),
    )


def _why_these(commission: Commission) -> str:
    if commission.built.quantities["held_share"]:
        return ", beyond what the border was judged for"
    return ": there a usual board has used up the room it was given"


_NORMAL = {True: "That is as it should be.", False: "Watch the ends of the panel for a fine line."}
_OF_KIND = {
    "board": (
        "Wash it by hand, both faces alike, and stand it on edge to dry; never soak it or put it in a dishwasher.",
    ),
    "table top": (
        "Leave air below the top as well as above; a cloth or a hot dish left for days makes one face move alone.",
    ),
    "seat": ("Do not screw anything across the grain from below; the screws would hold what has to slide.",),
    "lid": ("A heavy lid needs the stay that holds it open; look at its screws once a year.",),
    "door panel": ("Do not paint or varnish over the line where panel and frame meet; it would glue them together.",),
    "frame": ("Do not paint or varnish over the line where panel and frame meet; it would glue them together.",),
    "back": ("Fix nothing across the boards; each has to grow and shrink by itself.",),
    "drawer front": ("A drawer that binds in a damp summer is not planed then: wait for a dry week and call us.",),
    "drawer side": ("A drawer that binds in a damp summer is not planed then: wait for a dry week and call us.",),
    "drawer bottom": ("Leave the screw below the back as tight as it is; the bottom slides under its head.",),
}
