"""The brief: one small TOML file per commission, read whole, refused with every mistake and its line, never changed.

``keys`` says what may stand in a brief, ``lines`` finds where each key stands, ``read`` checks and turns the file
into a :class:`Brief`, ``record`` is that brief, ``template`` writes a new documented one.
"""

from __future__ import annotations

from .keys import KEYS, Key
from .lines import key_lines
from .read import read_brief
from .record import BoardOnHand, Brief, Finish, Hardware, House, Piece, Season, Stock
from .shop import Shop
from .template import template_text, write_template

__all__ = [
    "KEYS",
    "BoardOnHand",
    "Brief",
    "Finish",
    "Hardware",
    "House",
    "Key",
    "Piece",
    "Season",
    "Shop",
    "Stock",
    "key_lines",
    "read_brief",
    "template_text",
    "write_template",
]
