"""The shop's sheets: plan and section, the joint enlarged, story sticks at full size, and the blank that all begins with.

Everything is drawn from what the way hands over: places, section, lines where parts meet, fixings.
"""

from __future__ import annotations

from ..picture.scene import Picture
from .blank_sheet import blank_sheet
from .joint_sheet import joint_sheet
from .lists import check_plan
from .plan import SettingOut
from .plan_sheet import plan_sheet
from .stick_sheets import stick_sheets


def sheets(plan: SettingOut, paper: str = "A4") -> dict[str, Picture]:
    """All sheets of a piece by name: its plan, its joint, its story sticks, and its blank where one is glued up.

    >>> from woodlib.commission import chosen_brief, commission_of
    >>> from woodlib.setting_out.plan import set_out
    >>> of = commission_of(chosen_brief(), "frame_panel")
    >>> list(sheets(set_out(of.brief, verdict=of.built), "Letter"))
    ['piece', 'joint', 'stick-1', 'stick-2', 'stick-3', 'blank']
    """
    check_plan(plan)
    sticks = {f"stick-{number}": sheet for number, sheet in enumerate(stick_sheets(plan, paper), start=1)}
    blank = {"blank": blank_sheet(plan, paper)} if plan.blank else {}
    return {"piece": plan_sheet(plan, paper), "joint": joint_sheet(plan, paper)} | sticks | blank
