"""Parts of frames, of what is fitted into an opening, of backs, turned parts and sheets; see ``way_parts``."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import ceil

from ..units import both
from ..ways.made import JointGlue, JointLine, MadePiece, Place, Section, Size, Sum, WoodPart
from .given import Given
from .way_parts import ACROSS, ALONG, made

MITRE = Fraction(99, 70)  # square root of 2, 0.005 percent up
ZERO = Fraction(0)


def tenon_m(given: Given) -> Fraction:
    """How far a rail goes into a stile: the shop's tenon, or its share of the stile where that is less."""
    return min(given.practice.tenon_length_m, given.practice.tenon_share * given.border.exact_m)


def _framed(given: Given) -> tuple[WoodPart, tuple[Sum, ...], tuple[Section, ...], tuple[JointLine, ...]]:
    """The panel loose in a frame, how it fills the opening, the section across it, and its grooves."""
    border, thick = given.border.exact_m, given.thickness.exact_m
    frame, wide, long = given.border_thickness.exact_m, given.width.exact_m, given.length.exact_m
    width, length = given.cut("panel_width"), given.cut("panel_length")
    opening = wide - 2 * border, long - 2 * border
    inside = (width.exact_m - opening[0]) / 2, (length.exact_m - opening[1]) / 2
    edge, end = (given.cut(f"{side}_shoulder").exact_m for side in ("edge", "end"))
    panel = WoodPart(
        "panel",
        1,
        length,
        width,
        given.thickness,
        "panel",
        (length.exact_m - 2 * end, width.exact_m - 2 * edge),
        "with its tongues",
    )
    sums = (
        Sum(ACROSS, ((2, "stile", border), (1, "panel", width.exact_m), (-2, "panel in a groove", inside[0])), wide),
        Sum(ALONG, ((2, "rail", border), (1, "panel", length.exact_m), (-2, "panel in a groove", inside[1])), long),
    )
    tongue = given.cut("tongue_thickness").exact_m
    middle = (frame - tongue) / 2, (frame + tongue) / 2
    low, high = border - inside[0], border - inside[0] + edge
    down = max(ZERO, middle[1] - thick)  # flush with the frame, unless its tongue is further down than it is thick
    section = (
        Section("stile", (ZERO, border), (ZERO, frame)),
        Section("stile", (wide - border, wide), (ZERO, frame)),
        Section("panel", (high, wide - high), (down, down + thick)),
        Section("tongue", (low, high), middle, loose=True),
        Section("tongue", (wide - high, wide - low), middle, loose=True),
    )
    groove, groove_end = (given.cut(f"{part}_groove_depth").exact_m for part in ("stile", "rail"))
    lines = (
        JointLine("front edge of the panel", "along", border, border - groove, high, True),
        JointLine("back edge of the panel", "along", wide - border, wide - high, wide - border + groove, True),
        JointLine(
            "left end of the panel",
            "across",
            border,
            border - groove_end,
            border - inside[1] + end,
            True,
            (border - groove, wide - border + groove),
        ),
        JointLine(
            "right end of the panel",
            "across",
            long - border,
            long - border + inside[1] - end,
            long - border + groove_end,
            True,
            (border - groove, wide - border + groove),
        ),
    )
    return panel, sums, section, lines


def _frame_places(given: Given, stile: str, rail: str) -> tuple[Place, ...]:
    long, wide, border = given.length.exact_m, given.width.exact_m, given.border.exact_m
    inner, whole = (border, wide - border), (ZERO, long)
    return (
        Place(stile, whole, (ZERO, border)),
        Place(stile, whole, (wide - border, wide)),
        Place(rail, (ZERO, border), inner, "across"),
        Place(rail, (long - border, long), inner, "across"),
        Place("panel", (border, long - border), inner),
    )


def frame_panel(given: Given) -> MadePiece:
    """Two stiles of the whole length, two rails between them with tenons, and the loose panel."""
    panel, sums, section, lines = _framed(given)
    between, tenon = given.between(given.width), tenon_m(given)
    rail_length = between.plus(2 * tenon, "with two tenons (practice)")
    stiles = WoodPart("stile", 2, given.length, given.border, given.border_thickness)
    rails = WoodPart(
        "rail",
        2,
        rail_length,
        given.border,
        given.border_thickness,
        "strip",
        (between.exact_m, given.border.exact_m),
        "with its tenons",
    )
    border = given.border.exact_m
    rail = Sum(
        "rails", ((1, "rail", rail_length.exact_m), (-2, "tenon", tenon), (2, "stile", border)), given.width.exact_m
    )
    glue = JointGlue("tenon cheek", 8, tenon, border, 2)
    stub = given.cut("stile_groove_depth").exact_m >= tenon
    remarks = (
        _tenons(given, tenon),
        *(("The tenons go no deeper than the panel's groove: pin them, or make the border wider.",) if stub else ()),
    )
    return made(
        given,
        (panel, stiles, rails),
        (*sums, rail),
        _frame_places(given, "stile", "rail"),
        section,
        lines=lines,
        glue=(glue,),
        remarks=remarks,
    )


HAUNCH_SHARE = Fraction(1, 4)  # of a rail's width, at its outer edge; common practice, no source


def _tenons(given: Given, long: Fraction) -> str:
    """The tenons of the rails in a sentence: a third thick, and less wide than the rail by the groove and a haunch."""
    groove, border = given.cut("rail_groove_depth").exact_m, given.border.exact_m
    haunch = HAUNCH_SHARE * border
    thick, wide, reach, outer, inner = (
        both(size, 64, 0.1, "down", given.first)
        for size in (given.border_thickness.exact_m / 3, border - groove - haunch, long, haunch, groove)
    )
    if border - groove - haunch < border / 3:
        return f"Tenons: {thick} thick, {reach} long; the rail is too narrow for a haunch, so pin or dowel the joint."
    return (
        f"Tenons: {thick} thick, a third of the rail, {wide} wide and {reach} long; inside, {inner} of the rail's width goes "
        f"to the groove, outside, {outer} to a haunch as deep as the stile's groove (practice)."
    )


def mitred_frame(given: Given) -> MadePiece:
    """Four members over their mitres around the loose panel."""
    panel, sums, section, lines = _framed(given)
    border, frame = given.border.exact_m, given.border_thickness.exact_m
    # Over the mitres a member is as long outside as the piece; half of each corner belongs to its neighbour.
    front = WoodPart(
        "front and back member",
        2,
        given.length,
        given.border,
        given.border_thickness,
        "strip",
        (given.length.exact_m - border, border),
        "length over its mitres",
    )
    ends = WoodPart(
        "end member",
        2,
        given.width,
        given.border,
        given.border_thickness,
        "strip",
        (given.width.exact_m - border, border),
        "length over its mitres",
    )
    glue = JointGlue("mitre", 4, border * MITRE, frame, 4)
    members = {"stile": "front and back member", "rail": "end member"}
    named = tuple(
        replace(s, terms=tuple((n, members.get(what, what), size) for n, what, size in s.terms)) for s in sums
    )
    sections = tuple(replace(part, part=members.get(part.part, part.part)) for part in section)
    return made(
        given,
        (panel, front, ends),
        named,
        _frame_places(given, *members.values()),
        sections,
        lines=lines,
        glue=(glue,),
    )


def _fitted(given: Given, name: str, length: Size, width: Size, sums: tuple[Sum, ...], *remarks: str) -> MadePiece:
    """A part alone, as large as it is cut."""
    part = WoodPart(name, 1, length, width, given.thickness, "panel")
    size = length.exact_m, width.exact_m, given.thickness.exact_m
    return replace(
        made(
            given,
            (part,),
            sums,
            (Place(name, (ZERO, size[0]), (ZERO, size[1])),),
            (Section(name, (ZERO, size[1]), (ZERO, size[2])),),
            remarks=remarks,
        ),
        size_m=size,
    )


def drawer_front(given: Given) -> MadePiece:
    """The front as cut: lower than its opening by the gap above it."""
    height, length = given.cut("height"), given.cut("length")
    opening, along = given.width.exact_m, given.length.exact_m
    sums = (
        Sum(
            "height of the opening", ((1, "front", height.exact_m), (1, "gap above", opening - height.exact_m)), opening
        ),
        Sum(
            "length of the opening",
            ((1, "front", length.exact_m), (2, "gap at each end", (along - length.exact_m) / 2)),
            along,
        ),
    )
    return _fitted(given, "drawer front", length, height, sums)


def drawer_side(given: Given) -> MadePiece:
    """One side as cut; the other is alike."""
    height, opening = given.cut("height"), given.width.exact_m
    sums = (
        Sum("from runner to kicker", ((1, "side", height.exact_m), (1, "play", opening - height.exact_m)), opening),
    )
    return _fitted(given, "drawer side", given.length, height, sums, "A drawer has two: this is for one of them.")


def drawer_bottom(given: Given) -> MadePiece:
    """The bottom as cut: from the front's groove to behind the back, and into the grooves of both sides."""
    width, length = given.cut("bottom_width"), given.cut("bottom_length")
    cover, back, depth = given.allowance("cover"), given.border_thickness.exact_m, given.width.exact_m
    behind = width.exact_m - cover - depth - back
    terms = (
        (1, "in the front's groove", cover),
        (1, "clear depth", depth),
        (1, "below the back", back),
        (1, "behind the back today", behind),
    )
    side = (length.exact_m - given.length.exact_m) / 2
    sums = (
        Sum("from front to back", terms, width.exact_m),
        Sum(
            "from side to side",
            ((1, "clear width", given.length.exact_m), (2, "in a side's groove", side)),
            length.exact_m,
        ),
    )
    return _fitted(given, "drawer bottom", length, width, sums)


def inset_panel(given: Given) -> MadePiece:
    """A door or lid as cut: less than its opening by the reveals."""
    width, length = given.cut("panel_width"), given.cut("panel_length")
    hinged, opening = given.cut("hinged_gap").exact_m, given.width.exact_m
    free = opening - width.exact_m - hinged
    sums = (
        Sum(
            "across the opening",
            ((1, "hinged reveal", hinged), (1, "panel", width.exact_m), (1, "free reveal today", free)),
            opening,
        ),
        Sum(
            "along the opening",
            ((1, "panel", length.exact_m), (2, "reveal at each end", (given.length.exact_m - length.exact_m) / 2)),
            given.length.exact_m,
        ),
    )
    return _fitted(given, "panel", length, width, sums)


def _boarded(given: Given, reach: Size, joint: str, section) -> MadePiece:
    """Boards that fill the opening exactly with their gaps: as many as keep each no wider than the cut list's."""
    opening, long = given.width.exact_m, given.length.exact_m
    gap = given.cut("gap_today").exact_m
    edge = given.cut("edge_gap_today").exact_m
    widest = given.cut("board_width").exact_m
    count = max(1, ceil((opening - 2 * edge + gap) / (widest + gap)))
    face = (opening - 2 * edge - (count - 1) * gap) / count
    why = f"the opening less its gaps, shared by {count} boards"
    board = WoodPart(
        "board",
        count - 1,
        given.length,
        Size(face + reach.exact_m, f"{why}, with the {joint} of the cut list", "down"),
        given.thickness,
        "strip",
        (long, face),
        f"face and {joint}",
    )
    last = WoodPart("last board", 1, given.length, Size(face, why, "down"), given.thickness, note=f"without a {joint}")
    begins = [edge + number * (face + gap) for number in range(count)]
    names = ["board"] * (count - 1) + ["last board"]
    terms = ((count, "face of a board", face), (count - 1, "gap", gap), (2, "gap at the case", edge))
    return made(
        given,
        [part for part in (board, last) if part.count],
        (Sum(ACROSS, terms, opening),),
        (Place(name, (ZERO, long), (at, at + face)) for name, at in zip(names, begins, strict=True)),
        section(begins, face),
        lines=tuple(
            JointLine(f"gap {n}", "along", at - gap / 2, at - gap, at - gap + reach.exact_m, True)
            for n, at in enumerate(begins[1:], 1)
        ),
    )


def lapped_back(given: Given) -> MadePiece:
    """Boards with a lap under the next one."""
    reach, thick = given.cut("lap_width"), given.thickness.exact_m
    lap = given.cut("lap_thickness").exact_m

    def section(begins: list[Fraction], face: Fraction) -> list[Section]:
        """Every board in two steps: what is seen, and below it what reaches under the next board."""
        found = []
        for number, at in enumerate(begins, start=1):
            low = at if number == 1 else at + reach.exact_m
            high = at + face + (reach.exact_m if number < len(begins) else ZERO)
            found += [
                Section("board", (at, at + face), (ZERO, thick - lap)),
                Section("board", (low, high), (thick - lap, thick)),
            ]
        return found

    return _boarded(given, reach, "lap", section)


def tongued_back(given: Given) -> MadePiece:
    """Boards with a tongue in the next one."""
    reach, thick = given.cut("tongue_length"), given.thickness.exact_m
    tongue = given.cut("tongue_thickness").exact_m

    def section(begins: list[Fraction], face: Fraction) -> list[Section]:
        """Every board, and its tongue in the next one."""
        middle = (thick - tongue) / 2, (thick + tongue) / 2
        boards = [Section("board", (at, at + face), (ZERO, thick)) for at in begins]
        ends = [at + face for at in begins[:-1]]
        return [*boards, *(Section("tongue", (end, end + reach.exact_m), middle, loose=True) for end in ends)]

    return _boarded(given, reach, "tongue", section)


def _turned(given: Given, name: str, length: Size) -> tuple[WoodPart, tuple[Place, ...], tuple[Section, ...]]:
    wide = given.width.exact_m
    part = WoodPart(name, 1, length, given.width, replace(given.width), "turned")
    return part, (Place(name, (ZERO, length.exact_m), (ZERO, wide)),), (Section(name, (ZERO, wide), (ZERO, wide)),)


def round_tenon(given: Given) -> MadePiece:
    """The tenon, turned from a square."""
    length = given.cut("tenon_length")
    part, places, section = _turned(given, "tenon", length)
    wide = given.width.exact_m
    whole = Sum("diameter", ((1, "tenon", wide),), wide)
    return replace(made(given, (part,), (whole,), places, section, wide), size_m=(length.exact_m, wide, wide))


def loose_ring(given: Given) -> MadePiece:
    """The post, and a ring whose wall is as wide as the border."""
    post, places, section = _turned(given, "post", given.length)
    bore, wall = given.cut("bore"), given.border.exact_m
    across = bore.plus(2 * wall, "with a wall as wide as the border on both sides")
    # A ring has the area of its outer circle less that of its bore: (D - d)(D + d) of a square.
    ring = WoodPart(
        "ring",
        1,
        across,
        across,
        given.border_thickness,
        "turned",
        (2 * wall, across.exact_m + bore.exact_m),
        "bored to the cut list",
    )
    terms = ((2, "wall", wall), (1, "bore", bore.exact_m))
    wide = given.width.exact_m
    half = (across.exact_m - wide) / 2
    play = (bore.exact_m - wide) / 2
    around = (
        Section("ring", (-half, wide + half), (-half, wide + half)),
        Section("bore of the ring", (-play, wide + play), (-play, wide + play), loose=True),
    )
    return made(given, (post, ring), (Sum("ring", terms, across.exact_m),), places, (*around, *section), wide)


def _edged(given: Given, veneer: Fraction) -> MadePiece:
    """A sheet with solid edging on four sides, and veneer on both faces where there is any."""
    long, wide, border = given.length.exact_m, given.width.exact_m, given.border.exact_m
    along, across = given.between(given.length), given.between(given.width)
    core = given.thickness.less(2 * veneer, "less two veneers") if veneer else given.thickness
    edge = core if veneer else given.border_thickness
    parts = [
        WoodPart("sheet", 1, along, across, core, "sheet", note="no solid wood: bought as a sheet, not planed"),
        WoodPart(
            "edging along the grain",
            2,
            given.length,
            given.border,
            edge,
            "strip",
            (long - border, border),
            "length over its mitres",
        ),
        WoodPart(
            "edging across the grain",
            2,
            given.width,
            given.border,
            edge,
            "strip",
            (wide - border, border),
            "length over its mitres",
        ),
    ]
    sums = [
        Sum(ACROSS, ((2, "edging", border), (1, "sheet", across.exact_m)), wide),
        Sum(ALONG, ((2, "edging", border), (1, "sheet", along.exact_m)), long),
    ]
    glue = [
        JointGlue("edging along the grain", 2, along.exact_m, core.exact_m, given.clamps(along.exact_m)),
        JointGlue("edging across the grain", 2, across.exact_m, core.exact_m, given.clamps(across.exact_m)),
    ]
    top = veneer, veneer + core.exact_m
    section = [
        Section("edging along the grain", (ZERO, border), (veneer, veneer + edge.exact_m)),
        Section("edging along the grain", (wide - border, wide), (veneer, veneer + edge.exact_m)),
        Section("sheet", (border, wide - border), top, False),
    ]
    if veneer:
        parts.append(
            WoodPart(
                "veneer",
                2,
                given.length,
                given.width,
                Size(veneer, "shop allowance"),
                "veneer",
                note="no solid wood; cut larger and trimmed after pressing",
            )
        )
        sums.append(Sum("through", ((2, "veneer", veneer), (1, "sheet", core.exact_m)), given.thickness.exact_m))
        glue.append(JointGlue("veneer on the face", 2, long, wide, 0))
        section += [Section("veneer", (ZERO, wide), span) for span in ((ZERO, veneer), (top[1], top[1] + veneer))]
    places = _frame_places(given, "edging along the grain", "edging across the grain")
    places = tuple(replace(place, part="sheet") if place.part == "panel" else place for place in places)
    lines = (
        JointLine("front edging", "along", border, border, border),
        JointLine("back edging", "along", wide - border, wide - border, wide - border),
        JointLine("left edging", "across", border, border, border),
        JointLine("right edging", "across", long - border, long - border, long - border),
    )
    return made(
        given,
        parts,
        sums,
        places,
        section,
        lines=lines,
        glue=tuple(glue),
        remarks=("The sheet is sold in thicknesses of its own: take the nearest and let the edging follow.",),
    )


def edged_sheet(given: Given) -> MadePiece:
    """A sheet with solid edging."""
    return _edged(given, ZERO)


def veneered_sheet(given: Given) -> MadePiece:
    """A sheet with solid edging, veneered over both."""
    return _edged(given, given.allowance("veneer"))
