"""What the sheets show, as a text that carries their numbers: for whoever hears a picture instead of seeing it."""

from __future__ import annotations

from ..errors import InputError
from ..ways.made import Section
from .lists import check_plan, size_text
from .plan import SettingOut


def drawing_in_words(plan: SettingOut) -> str:
    """The drawing of the piece, and of its blank where there is one, as a text that carries their numbers.

    >>> from woodlib.commission import chosen_brief
    >>> from woodlib.setting_out.plan import set_out
    >>> drawing_in_words(set_out(chosen_brief(), ())).split(". ")[0]
    'Blank 50-1/2 in (1283 mm) long, 20-3/4 in (527 mm) wide, at least 15/16 in (24 mm) thick'
    """
    check_plan(plan)
    sentences = [blank_in_words(plan).removesuffix(".")] if plan.blank else []
    if plan.made:
        sentences += _way_in_words(plan)
    else:
        long, wide, thick = (size_text(size, plan.first) for size in plan.panel_m)
        sentences.append(f"Panel {long} by {wide}, {thick} thick")
    for item in plan.hardware:
        at = " and ".join(size_text(place, plan.first) for place in item.pair.holes_m)
        sentences.append(f"{item.pair.name}: holes at {at} {item.runs}, {size_text(item.inset_m, plan.first)} in")
    return ". ".join(sentences) + "."


def blank_in_words(plan: SettingOut) -> str:
    """The drawing of the blank as a text that carries its numbers."""
    check_blank(plan)
    sentences = [f"Blank {plan.glued_blank.text(plan.first)}", f"Along it: {', '.join(_numbered(plan))}"]
    if plan.joints:
        lines, dowels = len(plan.joints), len(plan.joints[0].wanted_m)
        sentences.append(
            f"{lines} glue lines with {dowels} dowels each" if lines > 1 else f"1 glue line with {dowels} dowels"
        )
    return ". ".join(sentences) + "."


def check_blank(plan: SettingOut) -> None:
    check_plan(plan)
    if plan.blank is None:
        raise InputError(f"{plan.piece.way.built_as} has no panel that is glued up, so there is no blank to draw.")


def _numbered(plan: SettingOut) -> list[str]:
    return [
        f"{part.number} {part.name} {size_text(part.size_m, plan.first)}" for part in plan.glued_blank.length.pieces
    ]


def _way_in_words(plan: SettingOut) -> list[str]:
    """The drawing's parts and section as sentences without a full stop."""
    made, first = plan.piece, plan.first
    long, wide, thick = (size_text(size, first) for size in made.size_m)
    sentences = [f"{made.way.title}, {long} by {wide}, {thick} thick"]
    sentences += [f"{part.count} x {part.name} {part.text(first)}" for part in made.parts]
    sentences.append(f"Section {made.section_runs} the grain through {', '.join(_names(made.section))}")
    return sentences


def _names(section: tuple[Section, ...]) -> list[str]:
    return list(dict.fromkeys(part.part for part in section))
