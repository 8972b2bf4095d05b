"""A study as a section of a page: frozen, checked, and kept for the next time."""

from __future__ import annotations

from ..study.study import Study
from . import cache
from .asking import Progress
from .page import packed, study_section
from .replay import freeze_checked

SECTION_MIME = "application/vnd.woodlib.section+json"
NAME = "STUDYNAME"  # stands for the section's name until the page gives it one


def section(study: Study, progress: Progress | None = None) -> dict[str, str]:
    """The section of a study and one line that says how it was checked; raises :class:`FreezeError`."""
    name = cache.study_name(study)
    content = cache.kept(name)
    if content is None:
        checked = freeze_checked(study, progress)
        content = {"table": packed(checked.frozen.payload), "report": checked.report()}
        cache.keep(name, content)
    return {
        "study": study.key,
        "html": study_section(study, content["table"], NAME),
        "report": content["report"],
    }
