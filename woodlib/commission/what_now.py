"""What now? Mishaps in the shop, each answered from the same plan: what is left, what is lost, and whether it still comes out."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from ..errors import InputError, Problems
from ..setting_out.blank import Blank
from ..setting_out.fixing import Pilot
from ..setting_out.plan import SettingOut
from ..units import number_in, shown, write
from ..units.exact import INCH, MILLIMETRE, fine_text, read_exact
from .card import Card, heading, joined, paragraphs, table
from .judged import Commission, commission_of
from .shop import setting_out_of

SMALL_M = {"customary": INCH / 32, "metric": MILLIMETRE}
LARGE_M = {"customary": INCH / 8, "metric": 3 * MILLIMETRE}
OFF_M = {"customary": INCH / 64, "metric": MILLIMETRE / 2}
HEAD = Fraction(9, 5)
"""Head of a screw, or a washer, over its shank (common practice, no source): what still covers a hole that was widened."""
_ON_THE_DAY = 2.0  # points of moisture by which the example differs from the sheet


Answer = Callable[[Commission, str], list[str]]


@dataclass(frozen=True)
class Mishap:
    """One thing that goes wrong: ``asks`` what its number is, ``usual`` an example in the shop's system, ``answer`` the answer."""

    name: str
    asks: str
    usual: Callable[[Commission], str]
    answer: Answer


def what_now(commission: Commission, name: str, value: str) -> list[str]:
    """The answer to one mishap in sentences.

    Raises :class:`InputError` for a mishap that is not known, and for a value that is none.

    >>> from woodlib.commission import chosen_brief, commission_of
    >>> what_now(commission_of(chosen_brief()), "step", "1/64 in")[0]
    'Plane it flush: 7/8 in (22.2 mm) is left of the 15/16 in (23.8 mm) that was glued, where 7/8 in (22.2 mm) is wanted, so nothing else changes.'
    """
    found = [mishap for mishap in MISHAPS if mishap.name == name.strip().casefold()]
    if not found:
        raise InputError(
            f"{shown(name)} is no mishap that is known; write one of: {', '.join(m.name for m in MISHAPS)}."
        )
    return found[0].answer(commission, value)


def mishaps(commission: Commission) -> Card:
    """Every mishap with an example, as the shop's page shows them."""
    rows = []
    for mishap in MISHAPS:
        usual = mishap.usual(commission)
        rows.append((mishap.asks.format(value=usual), " ".join(mishap.answer(commission, usual))))
    return joined(
        heading("What now?"),
        table(("If ...", "then"), rows, "Mishaps, answered from this plan"),
        paragraphs(_reserve(setting_out_of(commission))),
    )


def _length(text: str, name: str, high: Fraction = Fraction(1, 2)) -> Fraction:
    problems = Problems()
    size = read_exact(problems, name, text, high=high)
    problems.raise_if_any()
    return size


def _blank_of(plan: SettingOut) -> Blank:
    """The blank that is spoken of: the panel's, or that of the first part from one board."""
    return plan.blank or plan.blanks[0].blank


def _rough_m(plan: SettingOut) -> Fraction:
    """Thickness that it starts with: that of the thinnest board on hand, or the thickness that is bought for it."""
    used = {name for name, _, _ in plan.boards.used} if plan.boards else set()
    listed = [board.thickness_m for board in plan.on_hand if board.name in used]
    need = _blank_of(plan).thickness.total_m
    return min(listed, default=min((buy.rough.size_m for buy in plan.purchases if buy.needed_m >= need), default=need))


def _left_after(plan: SettingOut, lost_m: Fraction) -> tuple[str, Fraction]:
    """What is left of the thickness in words, and by how much it misses what is wanted, m; nothing where it suffices."""
    rough, wanted = _rough_m(plan), _blank_of(plan).finished_thickness_m
    left = rough - lost_m - 2 * plan.practice.face_planing_m
    said = f"{_fine(left, plan)} is left of {_fine(rough, plan)} where {_fine(wanted, plan)} is wanted"
    return said, max(wanted - left, Fraction(0))


def _flush(plan: SettingOut, step_m: Fraction) -> tuple[str, Fraction]:
    """As :func:`_left_after`, of strips that were planed to the blank's thickness before they were glued: a step takes one
    face, and the other is planed too."""
    blank, face = _blank_of(plan), plan.practice.face_planing_m
    planed, wanted = blank.thickness.total_m, blank.finished_thickness_m
    left = planed - max(step_m, face) - face
    said = f"{_fine(left, plan)} is left of the {_fine(planed, plan)} that was glued, where {_fine(wanted, plan)} is wanted"
    return said, max(wanted - left, Fraction(0))


def _fine(size: Fraction, plan: SettingOut) -> str:
    return fine_text(size, plan.first)


def _cut_from_wood(answer: Answer) -> Answer:
    """An answer that needs a blank: where nothing is cut from solid wood there is nothing to mend."""

    def answered(commission: Commission, value: str) -> list[str]:
        plan = setting_out_of(commission)
        bare = plan.blank is None and not plan.blanks
        return ["Nothing of it is cut from solid wood here: cut the part anew."] if bare else answer(commission, value)

    return answered


def _step(commission: Commission, value: str) -> list[str]:
    plan, step = setting_out_of(commission), _length(value, "step")
    if not plan.glued_up:
        return ["Nothing is glued up edge to edge in this plan."]
    said, missing = _flush(plan, step)
    if not missing:
        return [f"Plane it flush: {said}, so nothing else changes."]
    practice = plan.practice
    lost = practice.saw_kerf_m + 2 * practice.edge_jointing_m
    glued = plan.boards.glued_m if plan.boards else _blank_of(plan).width.total_m
    over = glued - lost - _blank_of(plan).finished_width_m
    sentences = [
        f"Planed flush, {said}: {_fine(missing, plan)} short. Saw the joint out, joint both edges and glue it again: "
        f"{_fine(lost, plan)} of the width goes into kerf and jointing."
    ]
    if over >= 0:
        sentences.append(f"The finished width still comes out, with {_fine(over, plan)} to spare.")
    else:
        sentences.append(
            f"The finished width then misses {_fine(-over, plan)}: glue on a strip, or take a wider board."
        )
    row = next((joint.places_m for joint in plan.joints if joint.places_m), None)
    if row and len(row) > 1:
        between = ", ".join(_fine((a + b) / 2, plan) for a, b in zip(row, row[1:], strict=False))
        sentences.append(
            f"The old dowels are sawn through: bore new ones half way between them, {between} from the left end of the "
            "blank, where no later cut comes near (see the order of cuts)."
        )
    return sentences


def _moved(commission: Commission, value: str) -> list[str]:
    plan, out = setting_out_of(commission), _length(value, "out of flat")
    said, missing = _left_after(plan, out)
    if not missing:
        return [f"Flatten it: {said}. Wait until it stops moving, take both faces alike, then the last cut."]
    rip = (
        "Rip it at the glue line nearest its middle, joint and glue it flatter"
        if plan.glued_up
        else "Take another board"
    )
    return [
        f"Flattened, {said}: {_fine(missing, plan)} short. {rip}, or finish it thinner and work tongues, grooves and screws "
        "out anew from the real thickness."
    ]


def _short(commission: Commission, value: str) -> list[str]:
    plan, by = setting_out_of(commission), _length(value, "short by")
    return [_reaches(plan, by, "length", "along the grain, no strip can be glued on end to end")]


def _narrow(commission: Commission, value: str) -> list[str]:
    plan, by = setting_out_of(commission), _length(value, "narrow by")
    return [_reaches(plan, by, "width", "glue on a strip with its rings and grain like its neighbour's")]


def _reaches(plan: SettingOut, by: Fraction, way: str, otherwise: str) -> str:
    division = _blank_of(plan).length if way == "length" else _blank_of(plan).width
    kerfs = division.of_kind_m("kerf")
    spare = division.total_m - sum((piece.size_m for piece in division.pieces), Fraction(0)) - kerfs
    if by <= spare:
        left = f"{_fine(spare - by, plan)} is" if by < spare else "nothing is"
        enough = f"Still enough: trims and spare of the {way} are {_fine(spare, plan)} in all, so {left} left for them."
        return f"{enough} Cut the better end true first and measure from it."
    return (
        f"Its trims and spare are {_fine(spare, plan)}, so the finished {way} misses {_fine(by - spare, plan)}. Ask the "
        f"client for that much less and change the brief (every size follows), or, {otherwise}."
    )


def _knot(commission: Commission, value: str) -> list[str]:
    plan, wide = setting_out_of(commission), _length(value, "knot")
    half = wide / 2
    places = [f"within {_fine(half, plan)} of a glue line" for _ in plan.joints[:1]]
    for name, low, high in _joints_of(plan):
        places.append(f"between {_fine(max(low - half, Fraction(0)), plan)} and {_fine(high + half, plan)} from {name}")
    for item in plan.hardware[:1]:
        reach = item.fit.drill.size_m / 2 + half
        places.append(f"within {_fine(reach, plan)} of the middle of a hole")
    keep = f" Its middle must not lie {', nor '.join(places)}: there take another board." if places else ""
    return [f"Fill it before the last thicknessing, so that the filling is planed with the wood.{keep}"]


def _joints_of(plan: SettingOut) -> Iterator[tuple[str, Fraction, Fraction]]:
    """Where joints lie: from which end or edge, from and to, m; what both ends have alike is said once."""
    long, wide = plan.piece.size_m[:2]
    found: dict[tuple[str, Fraction, Fraction], int] = {}
    for line in plan.piece.lines:
        across = line.runs == "across"
        whole, sides = (long, ("left end", "right end")) if across else (wide, (plan.edge, "far edge"))
        far = line.low_m + line.high_m > whole
        low, high = (whole - line.high_m, whole - line.low_m) if far else (line.low_m, line.high_m)
        twin = (sides[0], low, high)
        if far and twin in found:
            found[twin] = 2
        else:
            found[sides[1] if far else sides[0], low, high] = 1
    for (side, low, high), count in found.items():
        yield ("either end" if side == "left end" else "either edge") if count == 2 else f"the {side}", low, high


def _hole(commission: Commission, value: str) -> list[str]:
    plan, off = setting_out_of(commission), _length(value, "hole off by", Fraction(1, 20))
    if not plan.hardware:
        return [
            "Nothing is screwed on in this brief; a hole of the way itself is plugged with its grain along, and bored again."
        ]
    sentences = []
    for item in plan.hardware[:1]:
        screw, hole = item.fit.screw_m, item.fit.drill.size_m
        play = (hole - screw) / 2
        grown, cover = screw + 2 * off, HEAD * screw
        if isinstance(item.fit, Pilot):
            said = (
                "a wood screw needs its thread in sound wood: where the slot or the play of the fitting does not cover it, glue in "
                "a plug with its grain along the wood's, and bore again when it is hard"
            )
        elif off <= play:
            said = f"the hole's own play of {_fine(play, plan)} covers it"
        elif grown < cover:
            said = f"open the hole to {_fine(grown, plan)}; a head or washer of {_fine(cover, plan)} still covers that"
        else:
            plug = max(grown, 2 * screw)
            said = (
                f"a hole of {_fine(grown, plan)} would show beside a head of {_fine(cover, plan)}: bore it out to "
                f"{_fine(plug, plan)}, glue in a plug with its grain along the wood's, and bore again when it is hard"
            )
        same = " The others with the same screw alike." if len(plan.hardware) > 1 else ""
        sentences.append(f"{item.pair.name}, {_fine(off, plan)} off: {said}.{same}")
    return sentences


def _moisture(commission: Commission, value: str) -> list[str]:
    reading = number_in(value, "percent", name="moisture on the day", default_unit="percent", minimum=3, maximum=30)
    brief, before = commission.brief, commission.built
    stock = replace(brief.stock, mc_percent=reading, shop_temperature_c=None, shop_rh_percent=None)
    after = commission_of(replace(brief, stock=stock), commission.built.key).built
    first = commission.first
    changed = [
        f"{cut.label}: {cut.text(first)} instead of {old.text(first)}"
        for cut, old in zip(after.cuts, before.cuts, strict=True)
        if cut.text(first) != old.text(first)
    ]
    if not changed:
        return [
            f"At {write(reading, 'moisture')} every size of the cut list stays as it is; the verdict is {after.risk}."
        ]
    return [f"At {write(reading, 'moisture')} cut {'; '.join(changed)}. The verdict is {after.risk}."]


def _reserve(plan: SettingOut) -> str:
    """What one joint glued anew would want beforehand, and what that costs in wood."""
    if plan.blank is None or plan.boards is None or len(plan.boards.strips) < 2:
        return ""
    extra = plan.practice.saw_kerf_m + 2 * plan.practice.edge_jointing_m
    share = extra / plan.blank.width.total_m
    return (
        f"A reserve for one joint that has to be glued again: {_fine(extra, plan)} more width, "
        f"{write(float(100 * share), 'percent')} more wood. It is not in the blank."
    )


def _example(sizes: dict[str, Fraction]) -> Callable[[Commission], str]:
    def example(commission: Commission) -> str:
        size = sizes[commission.first]
        return f"{size / INCH} in" if commission.first == "customary" else f"{float(size / MILLIMETRE):g} mm"

    return example


def _damper(commission: Commission) -> str:
    return f"{commission.brief.stock.moisture_percent() + _ON_THE_DAY:.1f} %"


MISHAPS: Sequence[Mishap] = (
    Mishap("step", "a glued joint is out of flush by {value}", _example(SMALL_M), _cut_from_wood(_step)),
    Mishap("moved", "the panel is out of flat by {value} after a week", _example(SMALL_M), _cut_from_wood(_moved)),
    Mishap("short", "the blank came out short by {value}", _example(LARGE_M), _cut_from_wood(_short)),
    Mishap("narrow", "the blank came out narrow by {value}", _example(LARGE_M), _cut_from_wood(_narrow)),
    Mishap("knot", "a knot or check {value} across has to be filled", _example(LARGE_M), _knot),
    Mishap("hole", "a hole is off by {value}", _example(OFF_M), _hole),
    Mishap("moisture", "the meter says {value} on the day", _damper, _moisture),
)
"""Every mishap, in the order in which they happen."""


def answer_lines(commission: Commission, name: str, value: str) -> list[str]:
    """Lines for a terminal: the answer to one mishap, or all of them with an example."""
    if not name:
        return str(mishaps(commission)).splitlines()
    if not value:
        asks = next((m for m in MISHAPS if m.name == name), None)
        value = asks.usual(commission) if asks else ""
    return what_now(commission, name, value)
