"""Jinja2 templates of the kit: whatever ends in .html escapes what is put into it, .txt stays as it is."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template


@cache
def template(name: str) -> Template:
    """A template by its path below this package, for example ``commission/templates/card.html``."""
    return _environment().get_template(name)


@cache
def _environment() -> Environment:
    return Environment(
        loader=FileSystemLoader(Path(__file__).parent),
        autoescape=lambda name: name is None or not name.endswith(".txt"),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
