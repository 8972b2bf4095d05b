"""The commission: a brief's road into the notebook and the handout.

``names`` checks what only the rest of the kit can know (ways to build, finishes, studies), ``road`` turns the brief
into verdicts and a decision, ``letter``, ``care``, ``ready``, ``workshop`` and ``shop`` say it, ``card`` is how a text is shown.
"""

from __future__ import annotations

from .care import care_note
from .letter import comparison_table, decision, opening, small_print, why_it_moves
from .names import BRIEF_VARIABLE, DEMO, checked_brief, chosen_brief
from .ready import stock_ready
from .road import Commission, commission_of
from .shop import setting_out_of, shop_cards
from .workshop import cautions, cut_list, worked_size

__all__ = [
    "BRIEF_VARIABLE",
    "DEMO",
    "Commission",
    "care_note",
    "cautions",
    "checked_brief",
    "chosen_brief",
    "commission_of",
    "comparison_table",
    "cut_list",
    "decision",
    "opening",
    "setting_out_of",
    "shop_cards",
    "small_print",
    "stock_ready",
    "why_it_moves",
    "worked_size",
]
