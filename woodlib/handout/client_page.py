"""The pages of a commission, composed straight from its cards and its studies: the client's, and the shop's."""

from __future__ import annotations

from collections.abc import Callable

from ..commission.contents import CLIENT, SHOP, Entry, First, Fold, entries
from ..commission.judged import Commission
from ..study.study import Study
from .page import beside, folded, page
from .sections import Names, section

Told = Callable[[int, int], None]


def client_page(commission: Commission, progress: Told | None = None) -> str:
    """The client's page as HTML; ``progress`` gets how many percent of it are done."""
    made = {entry: entry(commission) for entry in entries(CLIENT)}
    studies = [shown for shown in made.values() if isinstance(shown, Study)]
    html: dict[Entry, str] = {}
    checks: list[str] = []
    names = Names()
    for entry, shown in made.items():
        if isinstance(shown, Study):
            before = len(checks)

            def show(done: int, total: int, before: int = before) -> None:
                if progress:
                    progress(round(100 * (before + done / total) / len(studies)), 100)

            frozen = section(shown, show)
            show(1, 1)
            leads = any(isinstance(part, First) and part.study is entry for part in CLIENT)
            html[entry] = frozen.html(names.name(shown.key), commission.page_units, leads)
            checks.append(frozen.report)
        else:
            html[entry] = shown.html
    body = [_part(part, html) for part in CLIENT]
    return page(commission.brief.title, body, checks, units=commission.page_units)


def _part(part: Entry | First | Fold, html: dict[Entry, str]) -> str:
    if isinstance(part, First):
        return beside(html[part.study], [html[entry] for entry in part.entries])
    return folded(part.summary, [html[entry] for entry in part.entries]) if isinstance(part, Fold) else html[part]


def shop_page(commission: Commission) -> str:
    """The shop's page as HTML: nothing on it slides, so it holds no script."""
    body = [shown.html for entry in SHOP if not isinstance(shown := entry(commission), Study)]
    return page(commission.brief.title, body, slides=False)
