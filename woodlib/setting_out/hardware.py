"""Hardware of a brief on its piece: holes, marks, fit, slots where it spans the grain, and what its holes come near."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from ..brief import Brief
from ..errors import Problems
from ..movement.board import Board
from ..movement.through_year import movement_through_year
from ..units import both
from ..units.exact import fine_text
from ..ways.made import JointLine, MadePiece, Place
from .fixing import BOLT, SCREW, SLOTTED, pilot
from .hardware_overlaps import holes_of, with_overlaps
from .hardware_places import ALONG, HardwarePlace, breaks_out, edges_of, hardware_places, off_the_wood
from .holes import HoleFit, HolePair, Marking, best_marking, hole_fit, hole_pair
from .practice import ShopPractice
from .slots import GrainSlots, grain_slots, year_strains


@dataclass(frozen=True)
class SetHardware:
    """One piece of hardware set out: its holes, the best way to mark them, whether they fit, and its slots, if any.

    ``inset_m`` of the holes' line from the edge they serve: the front edge, or the left end for hardware that runs
    across the grain. ``part`` what its holes are in; ``warnings`` what they come too near, one sentence each; ``metal`` slots that the metal
    needs where it spans the grain and the wood has none.
    """

    pair: HolePair
    runs: str
    inset_m: Fraction
    rule: str
    marking: Marking
    fit: HoleFit
    slots: GrainSlots | None
    part: str = "panel"
    warnings: tuple[str, ...] = ()
    metal: GrainSlots | None = None

    @property
    def centres_m(self) -> tuple[tuple[Fraction, Fraction], ...]:
        """Each hole as (along the grain from the left end, across the grain from the front edge), exact, m."""
        return _centres(self.pair, self.runs, self.inset_m)


def _centres(pair: HolePair, runs: str, inset_m: Fraction) -> tuple[tuple[Fraction, Fraction], ...]:
    if runs == ALONG:
        return tuple((place, inset_m) for place in pair.holes_m)
    return tuple((inset_m, place) for place in pair.holes_m)


def set_hardware(
    brief: Brief, size_m: tuple[Fraction, ...], piece: MadePiece | None, practice: ShopPractice
) -> tuple[SetHardware, ...]:
    """Hardware of the brief on a piece of this length and width; see :func:`hardware_places.hardware_places`.

    Raises :class:`InputError` with the line of the brief where holes fall beside the wood, break out of it, or run
    into each other.
    """
    problems, made = Problems(), []
    placed = hardware_places(brief, size_m, practice)
    for place in placed:
        refused = off_the_wood(brief, place, placed)
        if not refused:
            made.append(_set(brief, piece, place, practice))
            bore, slots = made[-1].fit.drill.size_m, made[-1].slots
            refused = breaks_out(brief, place, bore, _reach(made[-1]), slots is not None)
        if refused:
            problems.add(refused)
    problems.raise_if_any()
    return with_overlaps(made)


def _reach(item: SetHardware) -> tuple[Fraction, Fraction]:
    """From where to where its holes and slots go, in their direction."""
    spans = [span for hole in holes_of(item) for span in hole.along(item.runs)]
    return min(spans), max(spans)


def _set(brief: Brief, piece: MadePiece | None, place: HardwarePlace, practice: ShopPractice) -> SetHardware:
    runs, inset, screw = place.runs, place.inset_m, place.screw_m
    pair = hole_pair(place.work_m, place.centres_m, middle=place.middle_m, name=place.name)
    rules = ("0.5 mm", "1/64 in") if brief.first == "metric" else ("1/64 in", "0.5 mm")
    rule, marking = best_marking(pair, rules)
    fit = hole_fit(screw, rounding_error=marking.misfit_m, first=brief.first, practice=practice)
    places = [piece.part_at(*centre) for centre in _centres(pair, runs, inset)] if piece else []
    needed = (
        grain_slots(pair, *strains_of(brief), screw=screw, practice=practice) if _spans_grain(runs, places) else None
    )
    slots = needed if place.fixing == BOLT else None
    if place.fixing != BOLT:
        fit = pilot(fit, brief.species().value_or_estimate("specific_gravity_12").number, practice)
    part = " and ".join(dict.fromkeys(place.part for place in places if place)) or "panel"
    warnings = (
        tuple(_warnings(pair, runs, inset, fit, slots, piece, places, practice, edges_of(brief, runs), brief.first))
        if piece
        else ()
    )
    if place.fixing == SCREW and needed:
        warnings = (*warnings, _held_fast(pair, needed, brief.first))
    metal = needed if place.fixing == SLOTTED else None
    return SetHardware(pair, runs, inset, rule, marking, fit, slots, part, warnings, metal)


def _held_fast(pair: HolePair, needed: GrainSlots, first: str) -> str:
    """What two wood screws across the grain do: they hold it, or the metal gives."""
    moves = max(both(length.marked_m - needed.screw_m, 64, 0.5, "up", first) for length in needed.lengths)
    return (
        f"{pair.name}: two wood screws across the grain hold the wood between them, which wants to move by up to {moves} "
        "over the year; take metal with slots (fixing = slotted metal), or bolts through slots in the wood."
    )


def _spans_grain(runs: str, places: list[Place | None]) -> bool:
    """Whether the distance between its holes changes: it lies across the grain of the part that it is on."""
    grains = {place.grain for place in places if place}
    if len(grains) == 1:
        return (runs == ALONG) == (grains == {"across"})
    return runs != ALONG


def strains_of(brief: Brief) -> tuple[float, float]:
    """Swelling and shrinkage of the brief's wood from today, per metre of width, careful ends."""
    board = Board(
        brief.species(), brief.piece.width_m, brief.piece.thickness_m, brief.piece.length_m, brief.piece.ring_angle_deg
    )
    year = movement_through_year(board, brief.stock.moisture_percent(), *brief.months())
    return year_strains(year, brief.piece.width_m)


def _warnings(
    pair, runs, inset, fit: HoleFit, slots, piece: MadePiece, places, practice, edges, first: str
) -> Iterator[str]:
    """One sentence for each thing that its holes come too near."""
    margin, half = practice.dowel_margin_m, fit.drill.size_m / 2
    stretched = max([half, *(length.marked_m / 2 for length in (slots.lengths if slots else ()))])
    reach = {"along": stretched if runs == ALONG else half, "across": half if runs == ALONG else stretched}
    centres = _centres(pair, runs, inset)
    for line in piece.lines:
        near = [n for n, centre in enumerate(centres, 1) if _near(line, centre, reach, margin)]
        if near:
            yield _too_near(pair.name, near, line, margin, _inset_that_clears(line, runs, inset, reach, margin), first)
    parts = list(dict.fromkeys((place.along, place.across) for place in places if place))
    if len(parts) > 1:
        yield (
            f"{pair.name} has one hole in the {_two_parts(places, edges)}, which move apart over the year; keep both in one "
            "part, with narrower centres or another middle."
        )
    below = {place.part for place in piece.places if place.below for centre in centres if place.holds(*centre)}
    for part in sorted(below):
        yield f"{pair.name} has a hole over a {part}; drill no deeper than the panel is thick, or move it aside."
    edges = [n for n, centre in enumerate(centres, 1) if _at_the_edge(centre, reach, piece.size_m, margin)]
    if edges:
        yield (
            f"{pair.name}, {_numbers(edges)} less than {fine_text(margin, first)} from the edge of the wood; move it in, or "
            "expect the edge to split."
        )


def _two_parts(places: list[Place | None], edges: tuple[str, str]) -> str:
    """The parts of the outer holes; two of one name are told apart by the side that they are on."""
    names = [place.part for place in places[:: len(places) - 1] if place]
    if len(set(names)) < len(names):
        names = [f"{edge.split()[0]} {name}" for edge, name in zip(edges, names, strict=True)]
    return " and one in the ".join(names)


def _near(line: JointLine, centre: tuple[Fraction, Fraction], reach, margin: Fraction) -> bool:
    along, across = centre
    at, beside = (across, along) if line.runs == "along" else (along, across)
    if line.between and not line.between[0] <= beside <= line.between[1]:
        return False
    half = reach["across" if line.runs == "along" else "along"]
    return line.low_m - margin < at + half and at - half < line.high_m + margin


def _inset_that_clears(line: JointLine, runs: str, inset: Fraction, reach, margin: Fraction) -> Fraction | None:
    """The deepest inset that keeps its holes in front of the joint, where that is what an inset can do."""
    if line.runs != ("along" if runs == ALONG else "across") or inset > line.high_m:
        return None
    clear = line.low_m - margin - reach["across" if line.runs == "along" else "along"]
    return clear if clear > margin + reach["across"] else None


def _too_near(name: str, near: list[int], line: JointLine, margin: Fraction, inset: Fraction | None, first: str) -> str:
    what = "in the groove or the gap where parts must slide" if line.loose else "on the glue line"
    where = f"{name}, {_numbers(near)} at the {line.name}, {what} or within {fine_text(margin, first)} of it"
    remedy = f"an inset of up to {fine_text(inset, first, 'down')} keeps clear" if inset else "move it aside"
    return f"{where}; {remedy}."


def _at_the_edge(centre, reach, size_m, margin: Fraction) -> bool:
    spans = zip(centre, (reach["along"], reach["across"]), size_m[:2], strict=True)
    return any(at - half < margin or at + half > whole - margin for at, half, whole in spans)


def _numbers(near: list[int]) -> str:
    return f"hole {near[0]} lies" if len(near) == 1 else f"holes {' and '.join(map(str, near))} lie"
