"""Words of the ways to build that hang on sliders: names for a client, what is seen, what each month does."""

from __future__ import annotations

from ..reading.decided import larger, pick
from ..reading.say import length, say
from .ways_sheet import State

NAMES = {
    "glued_border": "border glued across the ends",
    "breadboard": "breadboard end that slides on slots",
    "frame_panel": "frame with a floating panel",
    "battens": "battens below, in slots",
    "buttons": "held to a base by buttons",
    "same_grain_border": "border with its grain along the panel's",
}

MAIN_CUTS = {
    "glued_border": (),
    "breadboard": (
        "outer slots, outward from the pin's centre",
        "outer slots, inward from the pin's centre",
        "groove stop from each end of the end piece",
    ),
    "frame_panel": (
        "groove in the stiles, depth",
        "panel, width across the grain",
        "line between shoulder and stile today, each side",
    ),
    "battens": (
        "outer slots, outward from the screw's centre",
        "outer slots, inward from the screw's centre",
        "batten end, set back from each edge",
    ),
    "buttons": ("gap between button shoulder and rail", "groove for the buttons, depth"),
    "same_grain_border": ("space to leave beside each long edge",),
}

PICTURES = {
    "glued_border": "A panel with a border glued across its end, seen from above; the border holds the end at today's "
    "width while the rest narrows and widens. Below, a gauge shows how hard the wood is pulled and squeezed.",
    "breadboard": "A panel with an end piece across its grain, seen from above; the panel becomes narrower and "
    "wider than "
    "the end piece. Below, the outer pin stands still while the slot in the tongue slides past it.",
    "frame_panel": "A panel in a frame, seen from above; the line beside the panel opens and closes, and the frame "
    "outside changes by its two stiles. Below, the tongue of the panel moves in and out of its groove.",
    "battens": "A panel with two battens below it, seen from above; the panel narrows and widens past them. Below, the "
    "outer screw travels along its slot in the batten.",
    "buttons": "A panel on a base, seen from above; the panel narrows and widens past the base. Below, a button "
    "moves in and out of the groove in the rail.",
    "same_grain_border": "A panel with border strips along its long edges, seen from above; all of it narrows "
    "and widens "
    "together. Below, the space left beside it to a wall or frame.",
}

_DRIEST = {
    "glued_border": "it wants to shrink {free} and the border holds most of that back, so it is pulled apart across "
    "its grain",
    "breadboard": "each corner of the end piece stands out {edge} beyond the panel",
    "frame_panel": "each edge still sits {cover} deep in its groove; the line beside it opens to {open} at most, and "
    "the frame outside becomes narrower {frame}",
    "battens": "the outer screws slide inward {outer}",
    "buttons": "each button draws back {edge} and still holds",
    "same_grain_border": "each outer edge draws in {edge}; nothing is held",
}
_DAMPEST = {
    "glued_border": "it wants to grow {free} and the border holds most of that back, so it pushes and may bow",
    "breadboard": "each edge of the panel stands out {edge} beyond the end piece",
    "frame_panel": "each edge stops short of the bottom of its groove; the line beside it closes to {closed} at the "
    "least, and the frame outside becomes wider {frame}",
    "battens": "the outer screws slide outward {outer}",
    "buttons": "each button moves outward {edge} and clears the rail",
    "same_grain_border": "each outer edge grows out {edge}; nothing is held",
}


def month_words(state: State, way: str):
    """What the driest (``narrowing``) or the dampest (``widening``) month does to this way to build."""
    numbers = state.numbers
    values = {"free": up_to(numbers[f"{way}_high"])}
    for name in ("edge", "outer"):
        if f"{name}_{way}" in numbers:
            values[name] = up_to(numbers[f"{name}_{way}"])
    if "cover" in numbers:
        values["cover"] = length(numbers["cover"], "down")
    if state.key == "frame_panel":
        today = state.cuts["line between shoulder and stile today, each side"]
        values["open"] = length(today + 0.5 * larger(numbers["panel_shrink"], 0.0), "up")
        values["closed"] = length(numbers["clearance"], "down")
        values["frame"] = up_to(numbers[f"frame_{way}"])
    return say((_DRIEST if way == "narrowing" else _DAMPEST)[state.key], **values)


def up_to(travel: float):
    """The most a travel can need, rounded up; "by nothing" where it goes the other way."""
    return pick(travel, [1e-6], ["by nothing", say("by up to {size}", size=length(larger(travel, 0.0), "up"))])
