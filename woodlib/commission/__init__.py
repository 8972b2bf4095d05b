"""The commission: from a brief to a decision, and the cards that tell it.

``checked`` reads a brief and checks what only the rest of the kit can know, ``judged`` turns it into verdicts and a
decision, ``contents`` lists the cards of its page in their order, ``card`` is how a text is shown.
"""

from __future__ import annotations

from importlib import import_module

# Name -> module that defines it, loaded when it is asked for: a verdict needs none of the cards.
_NAMES = {
    "DEMO": "checked",
    "Commission": "judged",
    "CLIENT": "contents",
    "SHOP": "contents",
    "asking": "what_if",
    "below_the_pair": "pair",
    "care_note": "care",
    "cautions": "workshop",
    "checked_brief": "checked",
    "checked_commission": "checked",
    "chosen_brief": "checked",
    "commission_of": "judged",
    "comparison_table": "deciding",
    "cut_list": "workshop",
    "decision": "deciding",
    "for_the_workshop": "contents",
    "four_lines": "in_four_lines",
    "how_sure": "sure",
    "how_they_compare": "deciding",
    "living_with_it": "contents",
    "mishaps": "what_now",
    "opening": "in_short",
    "setting_out": "contents",
    "setting_out_of": "shop",
    "shop_cards": "shop",
    "small_print": "sources",
    "stock_ready": "ready",
    "the_odds": "in_four_lines",
    "the_pair": "pair",
    "through_the_year": "contents",
    "title": "in_short",
    "ways_side_by_side": "contents",
    "ways_to_slide": "contents",
    "ways_told": "what_if",
    "why_it_moves": "reasons",
    "worked_size": "workshop",
}

__all__ = sorted(_NAMES)


def __getattr__(name: str):
    if name not in _NAMES:
        raise AttributeError(f"woodlib.commission has no name {name!r}; it has: {', '.join(__all__)}.")
    return getattr(import_module(f".{_NAMES[name]}", __name__), name)
