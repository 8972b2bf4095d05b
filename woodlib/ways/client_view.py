"""What a client sees of a piece in one month: two halves side by side, held fast as first seen, and as it is built.

Each half shows the piece from above, its movement drawn larger than it is, and a cut through the place that opens,
true to its proportions. A way to build says with its attributes which of the few kinds of view it has; all of them
follow from the same numbers as its verdict.
"""

from __future__ import annotations

from collections.abc import Callable

from ..picture.scene import Mark
from ..words.decided import Pick
from ..words.say import Said
from .client_cuts import boards_cut, framed_cut, opening_cut, overhang_cut, round_cut, step_cut, still_cut
from .client_parts import Seen
from .client_plans import boards_plan, ended_plan, framed_plan, free_plan, opening_plan, round_plan
from .way import Way

Plan = Callable[[Seen, float], list[Mark]]
Cut = Callable[[Seen, float, Said | Pick | str], list[Mark]]


def view_of(way: Way) -> tuple[Plan, Cut]:
    """How a way is seen from above and in the cut, by what it is."""
    if way.round:
        return round_plan, round_cut
    if way.boarded:
        return boards_plan, boards_cut
    if way.fitted:
        return opening_plan, opening_cut
    if not way.solid:
        return framed_plan, still_cut
    if way.framed:
        return framed_plan, framed_cut
    if way.keeps_border and way.keeps_flat and not way.holds:
        return ended_plan, step_cut
    return free_plan, overhang_cut
