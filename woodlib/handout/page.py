"""Put a page together: one HTML file with its own style, its own script and its tables, and no address to fetch.

The page's security policy allows nothing but what is in the file: no network, no frame, no form target, and of
scripts only the one whose hash the policy names.
"""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Sequence
from functools import cache
from pathlib import Path
from typing import Any

from ..picture.palette import hatches, style_sheet
from ..picture.svg import svg
from ..study.readings import READINGS_CSS, readings_html
from ..study.study import Study
from ..templates import template
from ..words.steps import script_table
from .controls import control_html
from .frozen import STILL

GENERATOR = "woodlib handout"
UNIT_CHOICES = (("both", "inches and mm"), ("inch", "inches"), ("metric", "mm"))
STANDS_STILL = (
    "This picture stands still here: its sliders could not be carried over exactly. It shows the piece as it was set."
)


@cache
def part(name: str) -> str:
    """The text of the page's script or style."""
    return Path(__file__).with_name(name).read_text(encoding="utf-8")


def study_section(
    study: Study, table: str, name: str, units: str = "both", kind: str = "study", below: str = ""
) -> str:
    """One study: question, controls, picture, readings and its table. ``name`` is unique on the page.

    A ``leading_study`` shows its picture first, then its control with a button that plays it, then ``below``, HTML; an
    ``asking_study`` its picture first, which stays in sight of its controls.

    What is written here is the start state in full, so that the page tells everything without its script; without a
    table it says that it stands still.
    """
    answer = study.answer()
    return template(f"handout/templates/{kind}.html").render(
        study=study,
        table=table,
        name=name,
        units=units,
        stands=" \u00b7 ".join(f"{entry.label}: {_start(entry, units)}" for entry in study.inputs),
        controls="".join(control_html(entry, name, units) for entry in study.inputs),
        picture=svg(answer.picture, answer.alt_text(units), units, name, styled=False, hatched=False),
        readings=readings_html(answer, units),
        still=STILL,
        gauge=answer.picture.gauge,
        below=below,
    )


def _start(entry: Any, units: str) -> str:
    """Where an input starts, as text."""
    return entry.text(entry.start, units)


def question_html(record: dict[str, Any]) -> str:
    """A question for a record made by a lesson: a prediction, what was seen, or an exercise.

    An exercise that comes with its ``rules`` (:mod:`woodlib.lesson.rules`) is judged on the page by ``judge.js``.
    """
    return template("handout/templates/question.html").render(record=record, name=f"{record['role']}-{record['key']}")


def curtained(study: str, after: Sequence[str]) -> str:
    """A study that the page's script covers until the predictions ``after`` are given; as it is where there are none."""
    return template("handout/templates/curtain.html").render(study=study, after=after) if after else study


def beside(study: str, others: Sequence[str]) -> str:
    """A study whose picture leads a page, with what stands beside it on a wide screen and below it on a narrow one."""
    return template("handout/templates/first.html").render(study=study, others=others)


def kept(parts: Sequence[str]) -> str:
    """Parts of a page that are cut out of its print and kept; ``parts`` are HTML."""
    return template("handout/templates/kept.html").render(parts=parts)


def folded(summary: str, parts: Sequence[str]) -> str:
    """Parts of a page that a reader opens; ``parts`` are HTML."""
    return template("handout/templates/folded.html").render(summary=summary, parts=parts)


def page(
    title: str,
    body: Sequence[str],
    checks: Sequence[str] = (),
    language: str = "en",
    units: str = "both",
    slides: bool = True,
    scripts: Sequence[str] = (),
) -> str:
    """The whole file; without a script where nothing ``slides`` and no further ``scripts`` are named.

    ``body`` is HTML in parts; ``title`` and ``checks``, a line per study on how it was checked, are text.
    """
    start = f'"use strict";const START_UNITS={json.dumps(units)},OPERATIONS={script_table()};'
    asks = any("data-question=" in text for text in body)
    parts = ("page.js", *(["predict.js"] if asks else []), *scripts)
    script = "\n".join([start, *map(part, parts)]) if slides or scripts else ""
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    allowed = f"script-src 'sha256-{digest}'; " if script else ""
    policy = (
        f"default-src 'none'; {allowed}style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"
    )
    return template("handout/templates/page.html").render(
        title=title,
        body=body,
        checks=checks,
        language=language,
        units=units,
        choices=UNIT_CHOICES if units == "both" else UNIT_CHOICES[1:],
        generator=GENERATOR,
        policy=policy,
        style=style_sheet() + READINGS_CSS + part("page.css"),
        hatches=hatches(),
        script=script,
        slides=slides,
    )
