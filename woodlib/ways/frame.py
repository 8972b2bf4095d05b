"""A loose panel in the grooves of a frame: its parts, its order of work and its drawing."""

from __future__ import annotations

from ..picture.scene import Line, Mark, box, corners
from ..words.decided import larger
from .drawn import MIDDLE, PLAN_LEFT, PLAN_RIGHT, PLAN_WIDTH, Drawn, broken, end_wood, hollow, label, sized, wood
from .given import Given
from .joint_drawing import CENTRE, LEFT, RIGHT
from .made import JointLine, Place, Section, Sum, WoodPart
from .making import ACROSS, ALONG, ZERO
from .plan_drawing import panel, sheet_box, sizes_px
from .steps import SQUARE_EDGE, SQUARE_ENDS, TOGETHER, Step


def framed(given: Given) -> tuple[WoodPart, tuple[Sum, ...], tuple[Section, ...], tuple[JointLine, ...]]:
    """The panel loose in a frame, how it fills the opening, the section across it, and its grooves."""
    border, thick = given.border.exact_m, given.thickness.exact_m
    frame, wide, long = given.border_thickness.exact_m, given.width.exact_m, given.length.exact_m
    width, length = given.cut("panel_width"), given.cut("panel_length")
    opening = wide - 2 * border, long - 2 * border
    inside = (width.exact_m - opening[0]) / 2, (length.exact_m - opening[1]) / 2
    flat = "edge_shoulder" not in given.verdict.way.sizes  # the whole thickness goes into the groove
    edge, end = inside if flat else (given.cut(f"{side}_shoulder").exact_m for side in ("edge", "end"))
    panel = WoodPart(
        "panel",
        1,
        length,
        width,
        given.thickness,
        "panel",
        (length.exact_m - 2 * end, width.exact_m - 2 * edge),
        "" if flat else "with its tongues",
    )
    sums = (
        Sum(ACROSS, ((2, "stile", border), (1, "panel", width.exact_m), (-2, "panel in a groove", inside[0])), wide),
        Sum(ALONG, ((2, "rail", border), (1, "panel", length.exact_m), (-2, "panel in a groove", inside[1])), long),
    )
    tongue = thick if flat else given.cut("tongue_thickness").exact_m
    groove_top = max(ZERO, (frame - tongue) / 2)
    middle = groove_top, groove_top + tongue
    low, high = border - inside[0], border - inside[0] + edge
    down = (
        middle[0] if flat else max(ZERO, middle[1] - thick)
    )  # flush with the frame, unless its tongue is further down than it is thick
    section = (
        Section("stile", (ZERO, border), (ZERO, frame)),
        Section("stile", (wide - border, wide), (ZERO, frame)),
        Section("panel", (high, wide - high), (down, down + thick)),
        *(
            Section("panel" if flat else "tongue", spread, middle, loose=True, play=given.cut("edge_play").exact_m)
            for spread in ((low, high), (wide - high, wide - low))
        ),
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


def frame_places(given: Given, stile: str, rail: str) -> tuple[Place, ...]:
    long, wide, border = given.length.exact_m, given.width.exact_m, given.border.exact_m
    inner, whole = (border, wide - border), (ZERO, long)
    return (
        Place(stile, whole, (ZERO, border)),
        Place(stile, whole, (wide - border, wide)),
        Place(rail, (ZERO, border), inner, "across"),
        Place(rail, (long - border, long), inner, "across"),
        Place("panel", (border, long - border), inner),
    )


ORDER = (
    Step("cut the frame's members to size", ["parallel face"], ["square inner edges"]),
    Step("cut the joints of the frame", ["square inner edges"], ["frame joints"]),
    Step("plough the grooves in the frame", ["square inner edges"], ["grooves"], ["square inner edges"]),
    Step("cut the tongues on the panel's edges", [SQUARE_EDGE, SQUARE_ENDS], ["tongues"], [SQUARE_EDGE, SQUARE_ENDS]),
    Step("finish the panel, tongues and all", ["tongues"], ["finished panel"]),
    Step("put frame and panel together dry", ["frame joints", "grooves", "finished panel"], ["dry fit"]),
    Step("glue the frame around the dry panel, soft spacers in its grooves", ["dry fit"], ["glued frame"], ["dry fit"]),
    Step(
        "pin the panel at the middle of each rail, where no spacers keep it there",
        ["glued frame"],
        ["panel in the middle"],
    ),
    Step("level the joints of the frame", ["panel in the middle"], [TOGETHER]),
)


def plan(d: Drawn, mitred: bool = False) -> list[Mark]:
    """A frame around the panel; nothing moves outside that could be seen."""
    whole, _, border = sizes_px(d)
    end, inner = PLAN_RIGHT - border, whole - 2.0 * border
    marks = panel(PLAN_LEFT, end, inner)
    for top in (MIDDLE - 0.5 * whole, MIDDLE + 0.5 * inner):
        marks += wood(box(PLAN_LEFT, top, PLAN_WIDTH, border), "border-wood", seed=41, count=22, within=sheet_box())
    marks += wood(box(end, MIDDLE - 0.5 * inner, border, inner), "border-wood", "y", 31, within=sheet_box(end))
    if mitred:
        for side in (-1.0, 1.0):
            corner = MIDDLE + side * 0.5 * inner
            marks.append(Line([(end, corner), (PLAN_RIGHT, corner + side * border)], "edge", 2.0))
    return [*marks, *broken(PLAN_LEFT, MIDDLE - 0.52 * whole, 1.04 * whole)]


def joint(d: Drawn) -> list[Mark]:
    """The panel's edge in the groove of the frame."""
    px, numbers = d.px, d.numbers
    depth = d.sizes["stile_groove_depth"]
    today = numbers["cover"] + 0.5 * larger(numbers["panel_shrink"], 0.0)
    moved = d.either(-0.5 * numbers["panel_shrink"], 0.5 * numbers["panel_growth"])
    deep = today + moved
    line = d.sizes["line_today"] - moved
    face, mid = CENTRE - 20.0, 160.0
    frame, groove = 0.5 * px(d.piece["border_thickness"]), 0.5 * px(numbers["cutter"])
    body, tongue = 0.5 * px(d.piece["thickness"]), 0.5 * px(d.sizes["tongue_thickness"])
    return [
        *end_wood(corners(face, mid - frame, face + px(d.piece["border_width"]), mid + frame), "border-wood"),
        *hollow(corners(face, mid - groove, face + px(depth), mid + groove)),
        *wood(corners(LEFT + 60.0, mid - tongue, face + px(deep), mid + tongue), count=3),
        *end_wood(corners(LEFT, mid - body, face - px(line), mid + body), "wood"),
        *sized((face, mid - frame - 8.0), (face + px(depth), mid - frame - 8.0), depth),
        *sized((face - px(line), mid + frame + 12.0), (face, mid + frame + 12.0), line, "nearest", offset=8.0),
        label(LEFT + 6.0, mid - body - 8.0, "panel"),
        label(RIGHT, mid + frame + 20.0, "frame", "end"),
        label(LEFT, 300.0, "in the groove:"),
        *sized((face, 318.0), (face + px(deep), 318.0), deep, "down", offset=8.0),
    ]
