"""The parts of every way to build: one short function each, from the typed sizes and the cuts as written.

Solid panels with ends, borders, battens or a base are here; frames, fitted parts, backs, turned parts and sheets are
in ``more_way_parts``.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from ..units.exact import Rounding
from ..ways.made import Fixing, JointGlue, JointLine, MadePiece, Place, Section, Size, Sum, WoodPart
from .given import Given
from .joints import even_row

ALONG, ACROSS = "along the grain", "across the grain"


def made(given: Given, parts, sums, places, section, thickness_m: Fraction | None = None, **more) -> MadePiece:
    """The record of a piece that is as long and wide outside as typed, and as thick as its section is deep."""
    section, verdict = tuple(section), given.verdict
    deepest = max(part.depth[1] for part in section)
    size = given.length.exact_m, given.width.exact_m, thickness_m or deepest
    return MadePiece(verdict.way, size, tuple(parts), tuple(sums), tuple(places), section, **more)


def whole_panel(given: Given) -> WoodPart:
    """A panel as large as the whole piece."""
    return WoodPart("panel", 1, given.length, given.width, given.thickness, "panel")


def end_pieces(given: Given) -> WoodPart:
    """Two pieces across the ends, their grain along their own length."""
    return WoodPart("end piece", 2, given.width, given.border, given.border_thickness)


def _end_places(given: Given, panel: str = "panel", grain: str = "across") -> tuple[Place, ...]:
    long, wide, border = given.length.exact_m, given.width.exact_m, given.border.exact_m
    across = (Fraction(0), wide)
    return (
        Place("end piece", (Fraction(0), border), across, grain),
        Place(panel, (border, long - border), across),
        Place("end piece", (long - border, long), across, grain),
    )


def _end_section(given: Given, end: bool = True, tongue: tuple[Fraction, Fraction] | None = None) -> list[Section]:
    """Cut along the piece: two ends, the panel between them, and its tongues (length, thickness) in the ends."""
    long, border = given.length.exact_m, given.border.exact_m
    thick, ends = given.thickness.exact_m, given.border_thickness.exact_m
    zero = Fraction(0)
    found = [
        Section("end piece", (zero, border), (zero, ends), end),
        Section("end piece", (long - border, long), (zero, ends), end),
        Section("panel", (border, long - border), (zero, thick), False),
    ]
    if tongue:
        reach, tongue_thick = tongue
        depth = (thick - tongue_thick) / 2, (thick + tongue_thick) / 2
        found.append(Section("tongue", (border - reach, border), depth, False, loose=True))
        found.append(Section("tongue", (long - border, long - border + reach), depth, False, loose=True))
    return found


def _end_lines(given: Given, outward: Fraction, loose: bool) -> tuple[JointLine, ...]:
    long, border = given.length.exact_m, given.border.exact_m
    return (
        JointLine("left end piece", "across", border, border - outward, border, loose),
        JointLine("right end piece", "across", long - border, long - border, long - border + outward, loose),
    )


def glued_border(given: Given) -> MadePiece:
    """A panel of the whole width between two end pieces that are glued on."""
    between = given.between(given.length)
    panel = WoodPart("panel", 1, between, given.width, given.thickness, "panel")
    border = given.border.exact_m
    whole = Sum(ALONG, ((2, "end piece", border), (1, "panel", between.exact_m)), given.length.exact_m)
    glue = JointGlue(
        "end piece to panel", 2, given.width.exact_m, given.thickness.exact_m, given.clamps(given.width.exact_m)
    )
    return made(
        given,
        (panel, end_pieces(given)),
        (whole,),
        _end_places(given),
        _end_section(given),
        lines=_end_lines(given, Fraction(0), False),
        glue=(glue,),
        section_runs="along",
    )


def fixings_across(given: Given, name: str, part: str, along_m: Fraction, diameter: Size) -> tuple[Fixing, ...]:
    """Five in a row across the panel: the middle one fast, half-way and outer ones in slots as long as the cut list says."""
    middle = given.width.exact_m / 2
    found = [Fixing(f"{name}, middle", part, along_m, middle, Rounding(Fraction(0), given.rule), diameter)]
    for which in ("halfway", "outer"):
        out = Rounding(given.allowance(f"{which}_distance"), given.rule, "down")  # nearer travels less
        slot = given.cut(f"{which}_slot")
        for side, sign in (("front", -1), ("back", 1)):
            place = middle + sign * out.marked_m
            found.append(Fixing(f"{name}, {which}, {side}", part, along_m, place, out, diameter, slot))
    return tuple(sorted(found, key=lambda fixing: fixing.across_m))


def breadboard(given: Given) -> MadePiece:
    """A panel with a tongue at both ends, in the grooves of two end pieces."""
    tongue, groove = given.cut("tongue_length"), given.cut("groove_depth")
    thick = given.cut("tongue_thickness")
    between = given.between(given.length)
    panel_length = between.plus(2 * tongue.exact_m, "with two tongues as in the cut list")
    panel = WoodPart(
        "panel",
        1,
        panel_length,
        given.width,
        given.thickness,
        "panel",
        (between.exact_m, given.width.exact_m),
        "with its tongues; between the shoulders it is as long as between the end pieces",
    )
    terms = (
        (2, "end piece", given.border.exact_m),
        (1, "panel", panel_length.exact_m),
        (-2, "tongue", tongue.exact_m),
    )
    depth, pin = given.cut("pin_from_shoulder").exact_m, given.cut("pin")
    border, long = given.border.exact_m, given.length.exact_m
    pins = (
        *fixings_across(given, "left pin", "end piece", border - depth, pin),
        *fixings_across(given, "right pin", "end piece", long - border + depth, pin),
    )
    return made(
        given,
        (panel, end_pieces(given)),
        (Sum(ALONG, terms, given.length.exact_m),),
        _end_places(given),
        _end_section(given, tongue=(tongue.exact_m, thick.exact_m)),
        lines=_end_lines(given, groove.exact_m, True),
        section_runs="along",
        fixings=pins,
        remarks=("Glue, if any, goes within a hand's width of the middle of each end.",),
    )


def own_blank_rim(given: Given) -> MadePiece:
    """A panel and its end pieces, cut one after the other from the panel's own blank."""
    between = given.between(given.length)
    panel = WoodPart("panel", 1, between, given.width, given.thickness, "panel")
    ends = WoodPart("end piece", 2, given.border, given.width, given.thickness, note="from the panel's own blank")
    border = given.border.exact_m
    whole = Sum(ALONG, ((2, "end piece", border), (1, "panel", between.exact_m)), given.length.exact_m)
    tongue = given.cut("loose_tongue_length")
    reach = given.cut("loose_tongue_reach")
    slot = given.cut("loose_tongue_slot_depth")
    thin = given.cut("loose_tongue_thickness")
    key = WoodPart(
        "loose tongue",
        2,
        replace(reach, exact_m=2 * reach.exact_m),
        tongue,
        thin,
        "offcut",
        note=("from offcuts, side by side where none is as wide; its grain along the panel's"),
    )
    through = Sum("loose tongue", ((2, "reach into each side", reach.exact_m),), 2 * reach.exact_m)
    remarks = [
        f"Slots for the loose tongues are {_in_words(slot, given)} deep on each side, in the middle of the thickness."
    ]
    if given.border_thickness.exact_m != given.thickness.exact_m:
        remarks.append("End pieces from the panel's own blank are as thick as the panel, not as the brief's border.")
    glue = JointGlue(
        "end piece to panel, end grain, with a loose tongue",
        2,
        given.width.exact_m,
        given.thickness.exact_m,
        given.clamps(given.width.exact_m),
    )
    return made(
        given,
        (panel, ends, key),
        (whole, through),
        _end_places(given, grain="along"),
        [*_end_section(given, end=False), *_loose_tongues(given, reach.exact_m, thin.exact_m)],
        lines=_slotted_lines(given, slot.exact_m),
        glue=(glue,),
        section_runs="along",
        own_ends_m=border,
        remarks=tuple(remarks),
    )


def _loose_tongues(given: Given, reach: Fraction, thick: Fraction) -> tuple[Section, ...]:
    """The loose tongue in both end joints, in the middle of the thickness."""
    border, depth = given.border.exact_m, given.thickness.exact_m
    span = (depth - thick) / 2, (depth + thick) / 2
    return tuple(
        Section("loose tongue", (at - reach, at + reach), span, False) for at in (border, given.length.exact_m - border)
    )


def _slotted_lines(given: Given, deep: Fraction) -> tuple[JointLine, ...]:
    """Both end joints with what their slots take up on each side."""
    return tuple(
        replace(line, low_m=line.at_m - deep, high_m=line.at_m + deep) for line in _end_lines(given, Fraction(0), False)
    )


def _in_words(size: Size, given: Given) -> str:
    from ..units import both

    return both(size.exact_m, 64, 0.1, first=given.first)


def glued_face_rim(given: Given) -> MadePiece:
    """A whole panel with a piece glued on its face at each end."""
    long, wide, border = given.length.exact_m, given.width.exact_m, given.border.exact_m
    thick, rim = given.thickness.exact_m, given.border_thickness.exact_m
    zero = Fraction(0)
    pieces = WoodPart("rim piece", 2, given.width, given.border, given.border_thickness)
    ends = [Place("rim piece", span, (zero, wide), "across") for span in ((zero, border), (long - border, long))]
    section = [
        Section("rim piece", (zero, border), (zero, rim)),
        Section("rim piece", (long - border, long), (zero, rim)),
        Section("panel", (zero, long), (rim, rim + thick), False),
    ]
    lines = (
        JointLine("left rim piece", "across", border, border, border),
        JointLine("right rim piece", "across", long - border, long - border, long - border),
    )
    return made(
        given,
        (whole_panel(given), pieces),
        (Sum("through the rim", ((1, "rim piece", rim), (1, "panel", thick)), thick + rim),),
        (*ends, Place("panel", (zero, long), (zero, wide))),
        section,
        thick + rim,
        lines=lines,
        glue=(JointGlue("rim piece on the face", 2, wide, border, 2 * given.clamps(wide)),),
        section_runs="along",
    )


def same_grain_border(given: Given) -> MadePiece:
    """A panel between two strips along its long edges, all grain the same way."""
    long, wide, border = given.length.exact_m, given.width.exact_m, given.border.exact_m
    between = given.between(given.width)
    panel = WoodPart("panel", 1, given.length, between, given.thickness, "panel")
    strips = WoodPart("border strip", 2, given.length, given.border, given.border_thickness)
    zero = Fraction(0)
    spans = (
        ("border strip", (zero, border)),
        ("panel", (border, wide - border)),
        ("border strip", (wide - border, wide)),
    )
    thick = {"panel": given.thickness.exact_m, "border strip": given.border_thickness.exact_m}
    whole = Sum(ACROSS, ((2, "border strip", border), (1, "panel", between.exact_m)), wide)
    lines = (
        JointLine("front strip", "along", border, border, border),
        JointLine("back strip", "along", wide - border, wide - border, wide - border),
    )
    glue = JointGlue("border strip to panel", 2, long, given.thickness.exact_m, given.clamps(long))
    return made(
        given,
        (panel, strips),
        (whole,),
        (Place(name, (zero, long), span) for name, span in spans),
        (Section(name, span, (zero, thick[name])) for name, span in spans),
        lines=lines,
        glue=(glue,),
    )


def batten_middles(given: Given) -> tuple[Fraction, ...]:
    """Middles of the battens along the panel, mirrored; a single one where two would not stand a batten apart."""
    end, apart = given.practice.batten_end_m, given.practice.batten_spacing_m
    if given.length.exact_m - 2 * end < 2 * given.border.exact_m:
        return (given.length.exact_m / 2,)
    return even_row(given.length.exact_m, end, apart)


def _on_battens(given: Given, length: Size, front: Fraction, sunk: Fraction, whole: Sum) -> MadePiece:
    """A whole panel on battens of one length that begin ``front`` behind its front edge."""
    middles, half = batten_middles(given), given.border.exact_m / 2
    battens = WoodPart(
        "batten",
        len(middles),
        length,
        given.border,
        given.border_thickness,
        note="middles from the left end: " + ", ".join(_in_words(Size(m, ""), given) for m in middles),
    )
    span = front, front + length.exact_m
    zero, wide, thick = Fraction(0), given.width.exact_m, given.thickness.exact_m
    below = thick - sunk, thick - sunk + given.border_thickness.exact_m
    places = [Place("panel", (zero, given.length.exact_m), (zero, wide))]
    places += [Place("batten", (m - half, m + half), span, "across", below=True) for m in middles]
    section = Section("panel", (zero, wide), (zero, thick)), Section("batten", span, below, False, loose=True)
    return made(given, (whole_panel(given), battens), (whole,), places, section, max(thick, below[1]))


def battens(given: Given) -> MadePiece:
    """A whole panel on battens screwed on through slots."""
    back = given.cut("set_back")
    length = Size(given.width.exact_m - 2 * back.exact_m, "typed in the brief, less the set-back of the cut list twice")
    terms = ((1, "batten", length.exact_m), (2, "set-back", back.exact_m))
    whole = Sum(ACROSS, terms, given.width.exact_m)
    piece = _on_battens(given, length, back.exact_m, Fraction(0), whole)
    screw = Size(given.allowance("screw"), "shop allowance")
    screws = [
        fixing
        for number, middle in enumerate(batten_middles(given), start=1)
        for fixing in fixings_across(given, f"screw in batten {number}", "batten", middle, screw)
    ]
    return replace(piece, fixings=tuple(screws))


def sliding_dovetail(given: Given) -> MadePiece:
    """A whole panel on battens in dovetailed housings, closed at the front; what rounding leaves is at the back."""
    length, stop = given.cut("batten_length"), given.cut("housing_stop")
    gap, sunk = given.cut("stop_gap"), given.cut("housing_depth")
    left = given.width.exact_m - length.exact_m - stop.exact_m - gap.exact_m
    terms = (
        (1, "stop", stop.exact_m),
        (1, "gap", gap.exact_m),
        (1, "batten", length.exact_m),
        (1, "set back from the back edge", left),
    )
    whole = Sum(ACROSS, terms, given.width.exact_m)
    return _on_battens(given, length, stop.exact_m + gap.exact_m, sunk.exact_m, whole)


def on_a_base(given: Given) -> MadePiece:
    """A whole panel held to a base: what holds it is small stuff or metal."""
    zero, long, wide = Fraction(0), given.length.exact_m, given.width.exact_m
    return made(
        given,
        (whole_panel(given),),
        (Sum(ACROSS, ((1, "panel", wide),), wide),),
        (Place("panel", (zero, long), (zero, wide)),),
        (Section("panel", (zero, wide), (zero, given.thickness.exact_m)),),
        remarks=(
            "The base is not set out here, nor where buttons, blocks or plates sit on it; they come with the base.",
        ),
    )
