"""The client's page of a commission, composed straight from its cards and its studies."""

from __future__ import annotations

from collections.abc import Callable

from ..commission.contents import CONTENTS
from ..commission.judged import Commission
from ..study.study import Study
from .page import page
from .sections import Names, section

Told = Callable[[int, int], None]


def client_page(commission: Commission, progress: Told | None = None) -> str:
    """The page as HTML; ``progress`` gets how many percent of it are done."""
    body: list[str] = []
    checks: list[str] = []
    names = Names()
    units = commission.page_units
    parts = [entry(commission) for entry in CONTENTS]
    studies = sum(isinstance(made, Study) for made in parts)
    for made in parts:
        if not isinstance(made, Study):
            body.append(made.html)
            continue
        before = len(checks)

        def show(done: int, total: int, before: int = before) -> None:
            if progress:
                progress(round(100 * (before + done / total) / studies), 100)

        frozen = section(made, show)
        show(1, 1)
        body.append(frozen.html(names.name(made.key), units))
        checks.append(frozen.report)
    return page(commission.brief.title, body, checks, units=units)
