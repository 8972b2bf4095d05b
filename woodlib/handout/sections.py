"""A study as a section of a page: frozen, checked, and kept for the next time; what cannot slide stands still."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from ..errors import InputError
from ..study.study import Study
from .asking import Progress
from .frozen import frozen_or_still
from .page import study_section

if TYPE_CHECKING:
    from ..live import Panel

SECTION_MIME = "application/vnd.woodlib.section+json"


@dataclass(frozen=True)
class Section:
    """A study with the table that lets it slide on a page, "" where it stands still, and how it was checked."""

    study: Study
    table: str
    report: str

    def html(self, name: str, units: str = "both", kind: str = "study", below: str = "") -> str:
        """The section under a ``name`` that is unique on its page; see :func:`~woodlib.handout.page.study_section`."""
        return study_section(self.study, self.table, name, units, kind, below)


class Names:
    """Names of sections, each one once on a page."""

    def __init__(self) -> None:
        self._used: Counter[str] = Counter()

    def name(self, key: str) -> str:
        """The study's key, with a number from its second section on."""
        self._used[key] += 1
        return f"{key}-{self._used[key]}" if self._used[key] > 1 else key


def section(study: Study, progress: Progress | None = None) -> Section:
    """The section of a study, with how it was checked, or why it stands still."""
    found = frozen_or_still(study, progress)
    return Section(study, found.table, found.report)


def show_sections(positions: Mapping[str, Mapping[str, Any]]) -> None:
    """From now on show sections instead of panels in the notebook that runs here; for a run that makes a page.

    ``positions`` are the places where sliders were left, by study: a study begins there as far as it still can.
    """
    names = Names()

    def record(panel: Panel) -> dict[str, Any]:
        study = panel.study.starting(**panel.values)
        made = section(_where_left(study, positions.get(study.key, {})))
        content = {"html": made.html(names.name(study.key)), "report": made.report, "after": list(panel.after)}
        return {SECTION_MIME: content}

    from .. import live  # a page that is made without a notebook needs no widgets

    live.instead = record


def _where_left(study: Study, positions: Mapping[str, Any]) -> Study:
    kept: dict[str, Any] = {}
    for key, value in positions.items():
        with suppress(InputError):
            kept |= {key: study.read({key: value})[key]}
    return study.starting(**kept)
