"""Everything set out for one brief: blank, boards, dowels, holes, weight, glue, what to buy, and cautions."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from ..brief import Brief
from ..errors import InputError, Problems
from ..movement.board import Board
from ..movement.inputs import check_kind
from ..movement.spread import Doubts
from ..movement.through_year import movement_through_year
from .blank import Blank, blank_for
from .boards import BoardsPlan, StockBoard, boards_for
from .buying import Purchase, to_buy
from .cautions import cautions_for
from .exact import Rounding, read_exact
from .glue import GlueUp, glue_lines
from .holes import HoleFit, HolePair, Marking, best_marking, hole_fit, hole_pair, shared_middles
from .joints import JointPlan, joint_row
from .later_cuts import LaterCut, cuts_of
from .order import CutOrder, cut_order, usual_steps
from .practice import ShopPractice, check_practice
from .slots import GrainSlots, grain_slots, year_strains
from .weight import Weight, weight_of

LIFTING = ("lid", "seat")
DIRECTIONS = {"along the grain": "length", "across the grain": "width"}


@dataclass(frozen=True)
class SetHardware:
    """One piece of hardware set out: its holes, the best way to mark them, whether they fit, and its slots, if any.

    ``inset_m`` of the holes' line from the edge they serve: the front edge, or the left end for hardware that spans
    the grain.
    """

    pair: HolePair
    runs: str
    inset_m: Fraction
    rule: str
    marking: Marking
    fit: HoleFit
    slots: GrainSlots | None

    @property
    def centres_m(self) -> tuple[tuple[Fraction, Fraction], ...]:
        """Each hole as (along the grain from the left end, across the grain from the front edge), exact, m."""
        if self.runs == "along the grain":
            return tuple((place, self.inset_m) for place in self.pair.holes_m)
        return tuple((self.inset_m, place) for place in self.pair.holes_m)


@dataclass(frozen=True)
class SettingOut:
    """A commission set out; the finished sizes in metres are exact, as typed in the brief."""

    title: str
    first: str
    species: str
    blank: Blank
    boards: BoardsPlan | None
    joints: tuple[JointPlan, ...]
    hardware: tuple[SetHardware, ...]
    order: CutOrder
    weight: Weight
    glue: GlueUp
    purchase: Purchase
    cautions: tuple[str, ...]
    practice: ShopPractice

    @property
    def panel_m(self) -> tuple[Fraction, Fraction, Fraction]:
        """Finished length, width and thickness of the panel without its end pieces, m."""
        panel = next(part for part in self.blank.length.pieces if part.name == "panel")
        return panel.size_m, self.blank.finished_width_m, self.blank.finished_thickness_m

    @property
    def end_piece_m(self) -> Fraction | None:
        """Length along the grain of each end piece, m; None where there is none."""
        ends = [part for part in self.blank.length.pieces if part.name != "panel"]
        return ends[0].size_m if ends else None

    @property
    def roundings(self) -> tuple[tuple[str, Rounding], ...]:
        """Every length that is rounded to be marked, by name: each once."""
        names = ("blank, length", "blank, width")
        found = list(zip(names, self.blank.roundings, strict=True))
        found += [("strip, width", rounding) for rounding in (self.boards.roundings if self.boards else ())]
        for item in self.hardware:
            found += [(f"{item.pair.name}, centre line from the left end", r) for r in (item.marking.middle,) if r]
            found += [
                (f"{item.pair.name}, hole {n} from {item.marking.start}", r)
                for n, r in enumerate(item.marking.marks, 1)
            ]
            found += [(f"{item.pair.name}, slot", r) for r in (item.slots.lengths if item.slots else ())]
        return tuple(found)


def set_out(
    brief: Brief,
    stock: Sequence[StockBoard] = (),
    *,
    end_pieces: bool | None = None,
    out_of_flat: object = 0,
    equal_widths: bool = False,
    practice: ShopPractice | None = None,
) -> SettingOut:
    """Set out the piece of a brief.

    Parameters
    ----------
    brief : as read by ``read_brief``; its lengths are taken exactly as typed
    stock : boards on hand; left out, the panel counts as one board: no glue lines, no dowels
    end_pieces : whether end pieces as long as the brief's border are cut from the panel's own blank; left out, they are
        wherever the brief has a border
    out_of_flat : of the stock, see :func:`blank.blank_for`
    equal_widths : rip all strips to one width
    practice : allowances of the shop

    Hardware of one direction shares that side evenly. Raises :class:`InputError` with a sentence for each bad input.

    >>> from woodlib.commission import chosen_brief
    >>> plan = set_out(chosen_brief(), [StockBoard("A", "6 in", "10 ft", "1-1/8 in", 3)])
    >>> plan.blank.text(), [strip.board for strip in plan.boards.strips]
    ('50-1/2 in (1283 mm) long, 20-3/4 in (528 mm) wide, at least 15/16 in (24 mm) thick', ['A', 'A', 'A', 'A'])
    """
    problems = Problems()
    check_kind(problems, "brief", brief, Brief, "read_brief('seat.toml')")
    practice = check_practice(problems, practice)
    read_exact(problems, "out of flat", out_of_flat, high=Fraction(1, 10), above=False)
    problems.raise_if_any()
    metric = brief.first == "metric"
    ends = _ends(brief, end_pieces)
    sizes = [brief.exact_m(f"piece.{entry}") for entry in ("length", "width", "thickness")]
    blank = blank_for(
        *sizes, end_pieces=ends, out_of_flat=out_of_flat, rule="1 mm" if metric else "1/16 in", practice=practice
    )
    boards = (
        boards_for(blank, stock, equal_widths=equal_widths, rule="1 mm" if metric else "1/16 in", practice=practice)
        if stock
        else None
    )
    hardware = tuple(_hardware(brief, sizes, practice))
    weight = weight_of(brief.species(), float(blank.finished_volume_m3), brief.stock.moisture_percent())
    count = len(boards.strips) if boards else 1
    edge = min(boards.strips[0].width_m, boards.strips[-1].width_m) if boards else None
    joints = tuple(_joints(blank, boards, hardware, practice)) if count > 1 else ()
    return SettingOut(
        brief.title, brief.first, brief.stock.species, blank, boards, joints, hardware,
        cut_order(usual_steps(end_pieces=ends is not None, dowels=count > 1)), weight,
        glue_lines(count, blank.length.total_m, blank.thickness.total_m, edge_board_width=edge, practice=practice),
        to_buy(blank, system="metric" if metric else "customary", practice=practice),
        cautions_for(blank, weight.mid_kg, brief.piece.kind in LIFTING, practice), practice,
    )  # fmt: skip


def _ends(brief: Brief, end_pieces: bool | None) -> Fraction | None:
    has_border = "piece.border_width" in brief.typed
    if end_pieces and not has_border:
        raise InputError(
            f"{brief.where('piece')}end pieces are wanted, but piece.border_width is not given; "
            'write border_width = "2 in".'
        )
    return brief.exact_m("piece.border_width") if has_border and end_pieces is not False else None


def _hardware(brief: Brief, sizes: list[Fraction], practice: ShopPractice):
    """Hardware of the brief on the panel; pieces that run the same way share that side evenly."""
    problems = Problems()
    rules = ("0.5 mm", "1/64 in") if brief.first == "metric" else ("1/64 in", "0.5 mm")
    strains = _strains(brief) if any(item.runs == "across the grain" for item in brief.hardware) else (0.0, 0.0)
    for place, item in enumerate(brief.hardware, start=1):
        alike = [n for n, other in enumerate(brief.hardware, start=1) if other.runs == item.runs]
        work = sizes[0] if item.runs == "along the grain" else sizes[1]
        middle = shared_middles(work, len(alike))[alike.index(place)]
        try:
            pair = hole_pair(work, brief.exact_m(f"hardware.{place}.centres"), middle=middle, name=item.name)
        except InputError as error:
            problems.absorb(error, brief.where(f"hardware.{place}.centres"))
            continue
        rule, marking = best_marking(pair, rules)
        fit = hole_fit(rounding_error=marking.misfit_m, first=brief.first, practice=practice)
        slots = grain_slots(pair, *strains, practice=practice) if item.runs == "across the grain" else None
        yield SetHardware(pair, item.runs, practice.hardware_inset_m, rule, marking, fit, slots)
    problems.raise_if_any()


def _strains(brief: Brief) -> tuple[float, float]:
    board = Board(
        brief.species(), brief.piece.width_m, brief.piece.thickness_m, brief.piece.length_m, brief.piece.ring_angle_deg
    )
    doubts = Doubts(meter_percent=brief.stock.meter_error_percent)
    year = movement_through_year(board, brief.stock.moisture_percent(), brief.year(), doubts)
    return year_strains(year, brief.piece.width_m)


def _joints(blank: Blank, boards: BoardsPlan, hardware: tuple[SetHardware, ...], practice: ShopPractice):
    """A dowel row in each glue line, clear of the saw cuts across it and of holes that come near it."""
    thick = blank.thickness.total_m
    start = blank.length.span(next(part.number for part in blank.length.pieces if part.name == "panel"))[0]
    front = (blank.width.total_m - blank.finished_width_m) / 2
    for glue_line in boards.joints_m:
        cuts = [*cuts_of(blank.length), *_hole_cuts(hardware, start, front - glue_line)]
        yield joint_row(blank.length.total_m, cuts, depth=thick / 2, practice=practice)


def _hole_cuts(hardware: tuple[SetHardware, ...], start_m: Fraction, aside_m: Fraction):
    for item in hardware:
        radius = item.fit.drill.marked_m / 2
        if item.slots:
            radius = max(radius, *(rounding.marked_m / 2 for rounding in item.slots.lengths))
        for number, (along, across) in enumerate(item.centres_m, start=1):
            at, beside = start_m + along, across + aside_m
            yield LaterCut(
                f"{item.pair.name}, hole {number}", at - radius, at + radius, across=(beside - radius, beside + radius)
            )
