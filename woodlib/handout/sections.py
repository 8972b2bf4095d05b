"""A study as a section of a page: frozen, checked, and kept for the next time."""

from __future__ import annotations

from ..study.study import Study
from .asking import Progress
from .frozen import frozen_or_still
from .page import study_section

SECTION_MIME = "application/vnd.woodlib.section+json"
NAME = "STUDYNAME"  # stands for the section's name until the page gives it one


def section(study: Study, progress: Progress | None = None) -> dict[str, str]:
    """The section of a study and one line that says how it was checked, or why it stands still."""
    found = frozen_or_still(study, progress)
    return {"study": study.key, "html": study_section(study, found.table, NAME), "report": found.report}
