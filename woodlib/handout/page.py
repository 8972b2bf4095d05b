"""Put a handout together: one HTML file with its own style, its own script and its tables, and no address to fetch.

The page's security policy allows nothing but what is in the file: no network, no frame, no form target, and of
scripts only the one whose hash the policy names.
"""

from __future__ import annotations

import base64
import hashlib
import json
from functools import cache
from html import escape
from importlib.resources import files

from ..picture.palette import style_sheet
from ..picture.svg import svg
from ..study.readings import READINGS_CSS, readings_html
from ..study.study import Study
from ..words.steps import script_table
from .controls import control_html
from .frozen import STILL

GENERATOR = "woodlib handout"
UNIT_CHOICES = (("both", "inches and mm"), ("inch", "inches"), ("metric", "mm"))


@cache
def part(name: str) -> str:
    """The text of the page's script or style."""
    return files(__package__).joinpath(name).read_text(encoding="utf-8")


def study_section(study: Study, table: str, name: str, units: str = "both") -> str:
    """One study: question, controls, picture, readings and its table. ``name`` is unique on the page.

    What is written here is the start state in full, so that the page tells everything without its script. Without a
    table the study is a still, and says so.
    """
    answer = study.answer()
    picture = svg(answer.picture, answer.alt_text(units), units, name, styled=False)
    question = f'<h3 id="{escape(name)}-question">{escape(study.question)}</h3>'
    readings = f"<div data-readings>{readings_html(answer, units)}</div>"
    begin = f'<section class="study" id="{escape(name)}" aria-labelledby="{escape(name)}-question"'
    if not table:
        stands = " · ".join(f"{entry.label}: {entry.text(entry.start, units)}" for entry in study.inputs)
        return f'{begin}>{question}<p>{escape(stands)}</p>{picture}{readings}<p class="quiet">{escape(STILL)}</p></section>'
    controls = "".join(control_html(entry, name, units) for entry in study.inputs)
    return (
        f'{begin} data-study="{units}">{question}{controls}'
        f'<p><button type="button" data-back hidden>Back to your piece</button></p>{picture}{readings}'
        f'<p role="status" class="unseen"></p>'
        f'<script type="application/octet-stream" data-table>{table}</script></section>'
    )


def page(title: str, body: str, checks: tuple[str, ...] = (), language: str = "en", units: str = "both") -> str:
    """The whole file. ``body`` is HTML already; ``title`` and ``checks``, a line per study on how it was checked, are text."""
    script = f'"use strict";const START_UNITS={json.dumps(units)},OPERATIONS={script_table()};\n' + part("page.js")
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    policy = (
        f"default-src 'none'; script-src 'sha256-{digest}'; style-src 'unsafe-inline'; img-src data:; "
        "base-uri 'none'; form-action 'none'"
    )
    choices = "".join(
        f'<label><input type="radio" name="units" autocomplete="off" value="{value}"{" checked" if value == units else ""}> {text}</label>'
        for value, text in UNIT_CHOICES
    )
    lines = "".join(f"<li>{escape(line)}</li>" for line in checks)
    checked = (
        f'<details class="quiet"><summary>How the sliders were checked</summary><ul>{lines}</ul></details>'
        if lines
        else ""
    )
    return f"""<!DOCTYPE html>
<html lang="{escape(language)}"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="{policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="generator" content="{GENERATOR}">
<title>{escape(title)}</title>
<style>{style_sheet()}{READINGS_CSS}{part("page.css")}</style></head>
<body><header><fieldset id="units" hidden><legend>Sliders in</legend>{choices}</fieldset>
<p class="quiet still">The sliders of this page need its script and a browser of 2023 or later. Pictures and numbers show the piece as it was set.</p>
</header><main>{body}</main>
<footer><p class="quiet">Averages of clear wood; a single board can be well off. Not for structural design. Local codes and
licensed practice come first.</p>{checked}</footer>
<script>{script}</script></body></html>
"""
