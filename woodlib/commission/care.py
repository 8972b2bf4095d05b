"""The care of a piece told to its client, on a card for the inside of a door: the air to keep, what to expect, when to call."""

from __future__ import annotations

from ..words.say import say, whole_percent
from .card import Card, Words, heading, joined, listed, paragraphs
from .in_four_lines import stands_in
from .judged import Commission
from .margin import safe_humidity_percent
from .seasons import air_of, likely, months_of, outside_m


def care_note(commission: Commission) -> Card:
    """For the client: the air to keep, what to expect in each season, when to call."""
    keep = say(
        "It is made for air {air} humidity. A small humidity meter in the room costs little and shows "
        "where you are; steady air near the middle is kindest.",
        air=air_of(commission),
    )
    care = [
        "Keep it out of direct sun and away from heaters, stoves and air vents.",
        "Wipe up water at once; clean with a damp cloth, never a wet one.",
        *_OF_KIND.get(commission.brief.piece.kind, ()),
    ]
    return joined(
        paragraphs(keep),
        heading("What to expect"),
        listed(expected(commission)),
        heading("Looking after it"),
        listed(care),
        heading("When to call us"),
        listed(calls(commission)),
        paragraphs(reached(commission)),
        first=commission.first,
    )


def expected(commission: Commission) -> list[Words]:
    """What the driest and the dampest month show, and what belongs to the way it is built."""
    way, months = commission.built.way, months_of(commission)
    seen = [stands_in(commission, month) for month in months]
    lines: list[Words] = [
        say(f"Around {month}: {{seen}}", seen=words) for month, words in zip(months, seen, strict=True)
    ]
    if seen[0] == seen[1]:
        lines = [say("All through the year {seen}", seen=seen[0])]
    room = commission.built.judged.size("space_beside") if way.framed else ""
    outside = likely(outside_m(commission)) if way.framed else ""
    lines += [say(way.expect, month=months[0], outside=outside, room=room)] if way.expect else []
    return lines if commission.built.allowed else [*lines, "Watch the ends of the panel for a fine line."]


def calls(commission: Commission) -> list[Words]:
    """When the client calls."""
    low, high = safe_humidity_percent(commission)
    bounds = {"low": whole_percent(5.0 * (low // 5.0)), "high": whole_percent(-5.0 * (-high // 5.0))}
    return [  # in steps of five, outward: no hygrometer of a home reads to one
        say("if the room stays below {low} or above {high} humidity for more than a month;", **bounds),
        f"if a line opens {commission.built.way.watch} that you can slide a sheet of paper into;",
        "if something that used to move freely sticks, or the piece bends.",
    ]


def reached(commission: Commission) -> str:
    """Who is called, and how, where the brief says it."""
    brief = commission.brief
    known = [text for text in (brief.maker, brief.maker_contact) if text]
    return f"Made by {', '.join(known)}." if known else ""


_OF_KIND = {
    "board": (
        "Wash it by hand, both faces alike, and stand it on edge to dry; never soak it or put it in a dishwasher.",
    ),
    "table top": (
        "Leave air below the top as well as above; a cloth or a hot dish left for days makes one face move alone.",
    ),
    "seat": ("Do not screw anything to it from below; a screw in the wrong place would hold what has to move.",),
    "lid": ("A heavy lid needs the stay that holds it open; look at its screws once a year.",),
    "door panel": ("Do not paint or varnish over the line where panel and frame meet; it would glue them together.",),
    "frame": ("Do not paint or varnish over the line where panel and frame meet; it would glue them together.",),
    "back": ("Fix nothing across the boards; each has to grow and shrink by itself.",),
    "drawer front": ("A drawer that sticks in a damp summer is not planed then: wait for a dry week and call us.",),
    "drawer side": ("A drawer that sticks in a damp summer is not planed then: wait for a dry week and call us.",),
    "drawer bottom": ("Leave the screw below the back as tight as it is; the bottom slides under its head.",),
}
