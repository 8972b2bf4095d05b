"""Ways out: one seat, every way to build it, and the width at which each stops being sensible in its house."""

from __future__ import annotations

from ..study import Answer, Choice, Reading, Span, study
from ..words.say import Said, length, movement, say
from .ways_compared import FINE_PRINT, compared, good_words, in_words, picture_of, reading_of
from .ways_out_numbers import DAMPEST, DRIEST, HIGHEST_M, INCH_M, LOWEST_M, STOCK_MC_PERCENT, bearing

CUTS = {"flatsawn": 0.0, "quartersawn": 90.0}


@study(
    key="ways-out",
    question="Which ways to build are sensible in this house, and up to what width?",
    inputs=[
        Choice("species", "Wood", ("white oak", "black cherry"), "white oak"),
        Choice("cut", "Cut", tuple(CUTS), "flatsawn"),
        Span("width", "Width of the seat, across its grain", "length", LOWEST_M, HIGHEST_M, INCH_M, 20 * INCH_M),
        Span("driest", "Air in the driest month", "humidity", DRIEST.lowest_percent, DRIEST.highest_percent, 1, 25),
        Span("dampest", "Air in the dampest month", "humidity", DAMPEST.lowest_percent, DAMPEST.highest_percent, 1, 62),
    ],
)
def ways_out(species: str, cut: str, width: float, driest: float, dampest: float) -> Answer:
    """Every way to build a seat, its verdict at this width, and the widest it bears."""
    sliding = bearing(species, CUTS[cut])
    here = sliding.at(driest, dampest)
    judged, travels = compared(here, width), here.travels(width)
    low, mid, high = (movement(travels[f"swing_{end}"]) for end in ("low", "mid", "high"))
    headline = say(
        f"In {cut} {species}, {{width}} wide, {{good}} in this house; {{glue}}.",
        width=length(width),
        good=good_words(judged),
        glue=judged[0].of(("even a glued border stays safe", "a glued border is strained", "a glued border cracks")),
    )
    moves = say("about {mid}, could be {low} to {high}", mid=mid, low=low, high=high)
    readings = (Reading("The seat moves over the year", moves, "free, from the driest to the dampest month"),)
    return Answer(
        picture_of(judged, sliding, width, "Ways to build, and the widest seat each bears", "this seat"),
        headline,
        (*readings, *(reading_of(entry, sliding) for entry in judged)),
        in_words(sliding, len(judged), width),
        (_seat(), *FINE_PRINT),
    )


def _seat() -> Said:
    return say(
        "The seat is invented: {long} long, {thick} thick, its border {border} wide, built today at "
        f"{STOCK_MC_PERCENT:g} % MC.",
        long=length(44 * INCH_M),
        thick=length(0.875 * INCH_M),
        border=length(2 * INCH_M),
    )
