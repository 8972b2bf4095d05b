"""Everything set out for one brief: parts, blanks, boards, dowels, holes, weight, glue, what to buy, and cautions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import partial

from ..brief import Brief, Shop
from ..door import check_kind
from ..errors import InputError, Problems
from ..shop_sizes import at_most, sold
from ..units import both
from ..units.exact import INCH, MILLIMETRE, Rounding, read_exact
from ..ways.made import MadePiece, WoodPart, roundings_of
from ..ways.verdict import Verdict
from .blank import Blank, blank_for, strip_blank
from .boards import TO_BUY, BoardsPlan, StockBoard
from .buying import Purchase, to_buy_all
from .cautions import Caution, cautions_for
from .division import Division, Part
from .finish_plan import FinishPlan, finish_plan
from .glue import GlueUp, glue_lines
from .hardware import SetHardware, set_hardware
from .hardware_places import UPRIGHT
from .joints import JointPlan, even_row, joint_row
from .later_cuts import LaterCut, cuts_of
from .made_pieces import made_by
from .nest import Nested, nest
from .order import CutOrder, cut_order, usual_steps
from .panel_boards import bought_m, strips_of
from .practice import ShopPractice, check_practice
from .sections import Sections, glue_up
from .way_order import order_for
from .weight import Weight, weight_of

LIFTING = ("lid", "seat")
STANDING = ("door panel", "frame", "back")
EASY_MARKS_M = {"customary": INCH / 8, "metric": 5 * MILLIMETRE}  # for what may lie a little to one side
DOWEL_REACH_M = {"customary": INCH, "metric": 25 * MILLIMETRE}  # into each board; common practice, no source
THICKEST_EDGE_DOWEL_M = INCH * 3 / 8  # a thicker one weakens the edge more than it lines boards up; no source
DIRECTIONS = {"along the grain": "length", "across the grain": "width"}


@dataclass(frozen=True)
class PartBlank:
    """The blank of a part that comes from one board; ``part.count`` of it."""

    part: WoodPart
    blank: Blank


@dataclass(frozen=True)
class SettingOut:
    """A commission set out; lengths in metres are exact.

    ``made`` the piece as a way to build makes it, None for the plain panel; ``blank`` and ``boards`` of the panel that
    is glued up, ``blanks`` of the parts from one board; ``remarks`` what to know beside the numbers; ``glue_up`` how its
    strips go together, None for one board; ``edge`` the long edge that is measured from: the lower one of what stands
    upright in a drawer; ``glued_up`` whether the panel takes more than one board; ``on_hand`` the boards that were
    given; ``short`` what is missing where they do not reach, to be said before all else; ``verdict`` what it was set out
    from; ``upright`` that it stands with its grain up, as a door does; ``shop`` what the shop says of itself;
    ``nested`` the blanks on the boards on hand, and those that found no place there; ``finish`` its coats
    and their days.
    """

    title: str
    first: str
    species: str
    blank: Blank | None
    boards: BoardsPlan | None
    joints: tuple[JointPlan, ...]
    hardware: tuple[SetHardware, ...]
    order: CutOrder
    weight: Weight
    glue: GlueUp
    glue_up: Sections | None
    purchases: tuple[Purchase, ...]
    cautions: tuple[Caution, ...]
    practice: ShopPractice
    made: MadePiece | None = None
    blanks: tuple[PartBlank, ...] = ()
    remarks: tuple[str, ...] = ()
    edge: str = "front edge"
    glued_up: bool = False
    on_hand: tuple[StockBoard, ...] = ()
    short: str = ""
    verdict: Verdict | None = None
    upright: bool = False
    shop: Shop = Shop()
    nested: Nested = Nested((), ())
    finish: FinishPlan | None = None

    @property
    def rule(self) -> str:
        """The rule that sizes are marked with in the shop's leading system."""
        return "1 mm" if self.first == "metric" else "1/16 in"

    @property
    def piece(self) -> MadePiece:
        """The piece as a way to build makes it, where the plan was made with a verdict."""
        assert self.made is not None, "a plan of the plain panel has no way to build"
        return self.made

    @property
    def glued_blank(self) -> Blank:
        """The blank of the panel, where one is glued up."""
        assert self.blank is not None, "no panel is glued up in this plan"
        return self.blank

    @property
    def panel_m(self) -> tuple[Fraction, Fraction, Fraction]:
        """Finished length, width and thickness of the plain panel, or of the whole piece as it is made, m."""
        if self.made:
            return self.made.size_m
        blank = self.glued_blank
        panel = next(part for part in blank.length.pieces if part.name == "panel")
        return panel.size_m, blank.finished_width_m, blank.finished_thickness_m

    @property
    def end_piece_m(self) -> Fraction | None:
        """Length along the grain of each end piece from the panel's own blank, m; None where there is none."""
        blank = self.glued_blank
        ends = [part for part in blank.length.pieces if part.number != _panel_number(blank)]
        return ends[0].size_m if ends else None

    @property
    def roundings(self) -> tuple[tuple[str, Rounding], ...]:
        """Every length that is rounded to be marked, by name: each once."""
        found = (
            list(roundings_of(self.made.parts, "0.5 mm" if self.first == "metric" else "1/64 in")) if self.made else []
        )
        if self.blank:
            found += zip(("blank, length", "blank, width"), self.blank.roundings, strict=True)
        for entry in self.blanks:
            names = (f"{entry.part.name}, blank, length", f"{entry.part.name}, blank, width")
            found += zip(names, entry.blank.roundings, strict=True)
        found += [("strip, width", rounding) for rounding in (self.boards.roundings if self.boards else ())]
        for item in self.hardware:
            found += [(f"{item.pair.name}, centre line from the left end", r) for r in (item.marking.middle,) if r]
            found += [
                (f"{item.pair.name}, hole {n} from {item.marking.start}", r)
                for n, r in enumerate(item.marking.marks, 1)
            ]
            found += [(f"{item.pair.name}, slot", r) for r in (item.slots.lengths if item.slots else ())]
        return tuple(found)


def stock_of(brief: Brief) -> tuple[StockBoard, ...]:
    """The boards on hand that a brief lists, exactly as typed.

    >>> from woodlib.commission import chosen_brief
    >>> [(board.name, board.count) for board in stock_of(chosen_brief())]
    [('A', 3), ('B', 1)]
    """

    def exact(number: int, size: str) -> Fraction:
        return brief.exact_m(f"boards.{number}.{size}")

    return tuple(
        StockBoard(board.name, exact(number, "width"), exact(number, "length"), exact(number, "thickness"), board.count)
        for number, board in enumerate(brief.boards, start=1)
    )


def set_out(
    brief: Brief,
    stock: Sequence[StockBoard] | None = None,
    verdict: Verdict | None = None,
    *,
    end_pieces: bool | None = None,
    out_of_flat: object = None,
    equal_widths: bool = False,
    practice: ShopPractice | None = None,
) -> SettingOut:
    """Set out the piece of a brief, as a way to build needs it.

    Parameters
    ----------
    brief : as read by ``read_brief``; its lengths are taken exactly as typed
    stock : boards on hand; left out, those of the brief, or boards of an ordinary width where it lists none; an empty
        list makes the panel one board: no glue lines, no dowels
    verdict : of the way to build, for this brief's piece: its cuts are taken as they are written in the brief's first
        system; left out, the plain panel of the brief is set out, with ``end_pieces`` from its own blank
    end_pieces : without a verdict: whether end pieces as long as the brief's border are cut from the panel's own blank;
        left out, they are wherever the brief has a border
    out_of_flat : of the stock, see :func:`blank.blank_for`; left out, the brief's
    equal_widths : rip all strips to one width
    practice : allowances of the shop

    Raises :class:`InputError` with a sentence for each bad input.

    >>> from woodlib.commission import chosen_brief, commission_of
    >>> plan = set_out(chosen_brief(), [StockBoard("A", "6 in", "10 ft", "1-1/8 in", 3)])
    >>> plan.blank.text(), [strip.board for strip in plan.boards.strips]
    ('50-1/2 in (1283 mm) long, 20-3/4 in (527 mm) wide, at least 15/16 in (24 mm) thick', ['A', 'A', 'A', 'A'])
    >>> seat = commission_of(chosen_brief(), "frame_panel")
    >>> [(entry.part.name, entry.part.count) for entry in set_out(seat.brief, verdict=seat.built).blanks]
    [('stile', 2), ('rail', 2)]
    """
    problems = Problems()
    check_kind(problems, "brief", brief, Brief, "read_brief('seat.toml')")
    usual = ShopPractice.of(brief.first, brief.shop) if practice is None and isinstance(brief, Brief) else practice
    practice = check_practice(problems, usual)
    if verdict is not None:
        check_kind(problems, "verdict", verdict, Verdict, "commission_of(brief).built")
    typed = isinstance(brief, Brief) and "wood.out_of_flat" in brief.typed
    warp = (brief.exact_m("wood.out_of_flat") if typed else 0) if out_of_flat is None else out_of_flat
    warp_m = read_exact(problems, "out of flat", warp, high=Fraction(1, 10), above=False)
    problems.raise_if_any()
    made = made_by(brief, verdict, practice) if verdict else None
    rule = "1 mm" if brief.first == "metric" else "1/16 in"
    blank = _blank(brief, made, end_pieces, warp_m, rule, practice)
    blanks = tuple(_part_blanks(made, warp_m, rule, practice))
    listed = stock_of(brief) if stock is None else stock
    if blank and (listed or stock is None):
        boards, short = strips_of(blank, listed, rule, practice, equal_widths=equal_widths, all_there=stock is not None)
    else:
        boards, short = None, ""
    size = made.size_m[:2] if made else tuple(brief.exact_m(f"piece.{entry}") for entry in ("length", "width"))
    nested = nest(boards, blank, [(e.part.name, e.blank, e.part.count) for e in blanks], listed, practice)
    hardware = tuple(set_hardware(brief, size, made, practice))
    solid = made.solid_m3 if made else blank.finished_volume_m3
    weight = weight_of(brief.species(), float(solid), brief.stock.moisture_percent())
    glued = len(boards.strips) > 1 if boards else False
    doweled = glued and brief.piece.edge_joints == "dowels"
    thin = bool(blank and doweled and blank.finished_thickness_m < practice.dowel_thinnest_m)
    sections = glue_up(boards, blank.length.total_m, practice, brief.first) if blank and boards and glued else None
    joints = (
        tuple(_joints(blank, boards, hardware, made, brief.first, practice)) if boards and doweled and not thin else ()
    )
    return SettingOut(
        brief.title,
        brief.first,
        brief.stock.species,
        blank,
        boards,
        joints,
        hardware,
        _order(brief, made, bool(joints), glued, hardware, blank, sections),
        weight,
        _glue(blank, boards, practice),
        sections,
        _purchases(brief, blank, boards, nested, practice),
        cautions_for(
            blank, weight.mid_kg, brief.piece.kind in LIFTING, practice, tuple(e.blank for e in blanks), brief.first
        ),
        practice,
        made,
        blanks,
        tuple(_remarks(made, boards, brief.first, practice.dowel_thinnest_m if thin else None)),
        "lower edge" if brief.piece.kind in UPRIGHT else "front edge",
        glued,
        tuple(listed),
        short,
        verdict,
        brief.piece.kind in STANDING,
        brief.shop,
        nested,
        finish_plan(brief.table_finish(), made, _whole_m(made, blank), glued, brief.finish.name),
    )


def _whole_m(made: MadePiece | None, blank: Blank | None) -> tuple[Fraction, ...]:
    """Length, width and thickness of all that is finished."""
    if made:
        return made.size_m
    assert blank is not None, "without a way to build there is a panel"
    along = sum((part.size_m for part in blank.length.pieces), Fraction(0))
    return along, blank.finished_width_m, blank.finished_thickness_m


def _panel_number(blank: Blank) -> int:
    """The number of the panel among the pieces along its blank: the longest."""
    return max(blank.length.pieces, key=lambda part: (part.name == "panel", part.size_m)).number


def _blank(brief: Brief, made: MadePiece | None, end_pieces: bool | None, warp: Fraction, rule: str, practice):
    if made is None:
        sizes = [brief.exact_m(f"piece.{entry}") for entry in ("length", "width", "thickness")]
        ends = _ends(brief, end_pieces)
    elif made.panel is None:
        return None
    else:
        sizes, ends = [size.exact_m for size in made.panel.sizes], made.own_ends_m
    return blank_for(*sizes, end_pieces=ends, out_of_flat=warp, rule=rule, practice=practice)


def _part_blanks(made: MadePiece | None, warp: Fraction, rule: str, practice: ShopPractice) -> Iterator[PartBlank]:
    for part in made.others if made else ():
        long, wide, thick = (size.exact_m for size in part.sizes)
        turned = part.role == "turned"
        yield PartBlank(
            part,
            strip_blank(
                part.name, (long, wide, thick), turned=turned, out_of_flat_m=warp, rule=rule, practice=practice
            ),
        )


def _ends(brief: Brief, end_pieces: bool | None) -> Fraction | None:
    has_border = "piece.border_width" in brief.typed
    if end_pieces and not has_border:
        raise InputError(
            f"{brief.where('piece')}end pieces are wanted, but piece.border_width is not given; "
            'write border_width = "2 in".'
        )
    return brief.exact_m("piece.border_width") if has_border and end_pieces is not False else None


def _order(
    brief: Brief,
    made: MadePiece | None,
    glued: bool,
    glued_up: bool,
    hardware: tuple[SetHardware, ...],
    blank: Blank | None,
    sections: Sections | None,
) -> CutOrder:
    apart = sections is not None and len(sections.goes) > 1
    if made is None:
        ends = blank is not None and len(blank.length.pieces) > 1
        return cut_order(usual_steps(ends, glued, glued_up=glued_up, sections=apart))
    lifts = brief.piece.kind in LIFTING
    return order_for(made, glued, bool(hardware), glued_up=glued_up, lifts=lifts, sections=apart)


def _glue(blank: Blank | None, boards: BoardsPlan | None, practice: ShopPractice) -> GlueUp:
    """The glue lines of the panel; none where nothing is glued up."""
    if blank is None:
        return GlueUp(0, Fraction(0), Fraction(0), 0.0, (), 0.0)
    count = len(boards.strips) if boards else 1
    edge = min(boards.strips[0].width_m, boards.strips[-1].width_m) if boards else None
    return glue_lines(count, blank.length.total_m, blank.thickness.total_m, edge_board_width=edge, practice=practice)


def _purchases(brief: Brief, blank: Blank | None, boards: BoardsPlan | None, nested: Nested, practice: ShopPractice):
    """What the boards on hand do not give: parts that found no place on them, and boards that the panel still lacks."""
    listed = [(blank, 1)] if blank and (boards is None or boards.assumed_m) else []
    if blank and boards and boards.bought:
        rough = Division("width", (Part(TO_BUY, "piece", bought_m(practice), 1),))
        listed = [(replace(blank, width=rough), boards.bought)]
    listed += [(missing, count) for _, missing, count in nested.missing]
    try:
        return to_buy_all(listed, system=brief.first, practice=practice)
    except InputError as error:
        problems = Problems()
        problems.absorb(error, brief.where("piece.thickness"))
        problems.raise_if_any()
        raise


def _remarks(made: MadePiece | None, boards: BoardsPlan | None, first: str, thinnest: Fraction | None):
    if thinnest:
        yield f"The panel's edges are glued plain, without dowels: it is thinner than {both(thinnest, first=first)}."
    if boards and boards.assumed_m:
        wide = both(boards.assumed_m, first=first)
        yield f"The brief lists no boards: strips are set out for rough boards {wide} wide, assumed; list yours in it."
    yield from (f"Left out: {reason}." for reason in (boards.left_out if boards else ()))
    if made:
        yield from made.remarks
    if made and any(part.role in ("sheet", "veneer") for part in made.parts):
        yield "The weight is that of the solid wood alone; sheet and veneer come on top, and are bought as such."


def _readable_row(length_m: Fraction, first: str, practice: ShopPractice) -> list[Fraction]:
    """An even row of dowels, each at the nearest mark that is read off at a glance."""
    step = EASY_MARKS_M[first]
    row = even_row(length_m, practice.dowel_end_m, practice.dowel_spacing_m)
    return [max(step, round(place / step) * step) for place in row]


def _dowel(thickness_m: Fraction, first: str) -> tuple[Fraction, Fraction] | None:
    """Diameter and reach of the thickest dowel that is sold and takes no more than half of a board; None for thin ones."""
    dowel = at_most(sold("dowel", first), min(thickness_m / 2, THICKEST_EDGE_DOWEL_M + MILLIMETRE / 2))
    return (dowel.size_m, DOWEL_REACH_M[first]) if dowel else None


def _joints(blank: Blank, boards: BoardsPlan, hardware, made: MadePiece | None, first: str, practice: ShopPractice):
    """A dowel row in each glue line, clear of all that is cut later: saw cuts, tongues, housings and holes."""
    thick = blank.thickness.total_m
    dowel = _dowel(blank.finished_thickness_m, first)
    if dowel is None:
        return
    row_of = partial(joint_row, blank.length.total_m, size=dowel[0], reach=dowel[1], depth=thick / 2, practice=practice)
    start = blank.length.span(_panel_number(blank))[0]
    front = (blank.width.total_m - blank.finished_width_m) / 2
    left, near = made.panel_at_m if made else (Fraction(0), Fraction(0))
    for glue_line in boards.joints_m:
        cuts = [*cuts_of(blank.length, first), *_hole_cuts(hardware, made, start - left, front - near - glue_line)]
        cuts += _way_cuts(made, blank, start - left) if made else ()
        wanted = _readable_row(blank.length.total_m, first, practice)
        row = row_of(cuts, positions=wanted)
        if row.places_m is None:  # a place in the very middle cannot move while both halves stay alike
            row = row_of(cuts, positions=wanted, keep_mirrored=False)
        yield row


def _way_cuts(made: MadePiece, blank: Blank, start_m: Fraction) -> Iterator[LaterCut]:
    """Tongues on the panel's ends, and housings in its back; ``start_m`` of the piece's left end along the blank."""
    low, high = blank.length.span(_panel_number(blank))
    for line in made.lines:
        begins, ends = max(low, start_m + line.low_m), min(high, start_m + line.high_m)
        if line.runs == "across" and begins < ends:
            yield LaterCut(f"{'tongue' if line.loose else 'slot'} at the {line.name}", begins, ends)
    planed = (blank.thickness.total_m - blank.finished_thickness_m) / 2
    sunk = next((part.depth[0] for part in made.section if part.part == "batten"), blank.finished_thickness_m)
    for number, place in enumerate((p for p in made.places if p.below and sunk < blank.finished_thickness_m), 1):
        depth = planed + sunk, planed + blank.finished_thickness_m
        yield LaterCut(f"housing {number}", start_m + place.along[0], start_m + place.along[1], depth=depth)


def _hole_cuts(hardware, made: MadePiece | None, start_m: Fraction, aside_m: Fraction) -> Iterator[LaterCut]:
    for item in hardware:
        radius = item.fit.drill.size_m / 2
        if item.slots:
            radius = max(radius, *(rounding.marked_m / 2 for rounding in item.slots.lengths))
        for number, (along, across) in enumerate(item.centres_m, start=1):
            place = made.part_at(along, across) if made else None
            if made and made.panel and place is not None and place.part != made.panel.name:
                continue
            at, beside = start_m + along, across + aside_m
            yield LaterCut(
                f"{item.pair.name}, hole {number}", at - radius, at + radius, across=(beside - radius, beside + radius)
            )
