"""Handouts: one HTML file a client can slide without a network."""

from __future__ import annotations

from .write import handout_from_notebook, write_handout

__all__ = ["handout_from_notebook", "write_handout"]
