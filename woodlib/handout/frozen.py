"""A study as a page shows it: with the table that its sliders read, or, where it cannot be frozen, as a still.

A page is never lost to one study: what cannot be frozen stands still, the page says so, and whoever made the page is
told why.
"""

from __future__ import annotations

from dataclasses import dataclass

from ..study.study import Study
from . import cache
from .asking import FreezeError, Progress
from .pack import packed

STILL = (
    "This picture stands still: it shows the piece as it was set. Its sliders move in the notebook, but could not be "
    "brought onto this page."
)


@dataclass(frozen=True)
class FrozenStudy:
    """A packed table for the page's script, "" for a still; the line on how it was checked, or the reason it stands still."""

    table: str
    report: str

    @property
    def slides(self) -> bool:
        """Whether its sliders move on a page."""
        return bool(self.table)


def frozen_or_still(study: Study, progress: Progress | None = None) -> FrozenStudy:
    """Freeze a study and check it, or take it from what was kept; one that cannot be frozen becomes a still."""
    name = cache.study_name(study)
    content = cache.kept(name)
    if content is None:
        from .replay import freeze_checked  # what was kept needs none of its linear algebra

        try:
            checked = freeze_checked(study, progress)
        except FreezeError as error:
            return FrozenStudy("", f"{study.key} stands still on the page. {error}")
        content = {"table": packed(checked.frozen.payload), "report": checked.report()}
        cache.keep(name, content)
    return FrozenStudy(content["table"], content["report"])
