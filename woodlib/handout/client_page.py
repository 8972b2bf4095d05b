"""The pages of a commission, composed straight from its cards and its studies: the client's, and the shop's."""

from __future__ import annotations

from collections.abc import Callable

from ..commission.card import Card
from ..commission.contents import CLIENT, SHOP, Entry, First, Fold, Kept, entries
from ..commission.judged import Commission
from ..study.study import Study
from .page import beside, folded, kept, page
from .sections import Names, section

Told = Callable[[int, int], None]


def client_page(commission: Commission, progress: Told | None = None) -> str:
    """The client's page as HTML; ``progress`` gets how many percent of it are done."""
    made = {entry: entry(commission) for entry in entries(CLIENT)}
    html: dict[Entry, str] = {entry: shown.switched_html for entry, shown in made.items() if isinstance(shown, Card)}
    studies = {entry: shown for entry, shown in made.items() if isinstance(shown, Study)}
    leading: dict[Entry, str] = {part.study: html[part.below] for part in CLIENT if isinstance(part, First)}
    checks: list[str] = []
    names = Names()
    for entry, shown in studies.items():

        def show(done: int, total: int, before: int = len(checks)) -> None:
            if progress:
                progress(round(100 * (before + done / total) / len(studies)), 100)

        frozen, kind = section(shown, show), "leading_study" if entry in leading else "asking_study"
        show(1, 1)
        html[entry] = frozen.html(names.name(shown.key), commission.page_units, kind, leading.get(entry, ""))
        checks.append(frozen.report)
    body = [_part(part, html) for part in CLIENT]
    return page(commission.brief.title, body, checks, units=commission.page_units)


def _part(part: Entry | First | Kept | Fold, html: dict[Entry, str]) -> str:
    if isinstance(part, First):
        return beside(html[part.study], [html[entry] for entry in part.entries])
    if isinstance(part, Kept):
        return kept([html[entry] for entry in part.entries])
    return folded(part.summary, [html[entry] for entry in part.entries]) if isinstance(part, Fold) else html[part]


def shop_page(commission: Commission) -> str:
    """The shop's page as HTML: nothing on it slides, so it holds no script."""
    body = [shown.html for entry in SHOP if not isinstance(shown := entry(commission), Study)]
    return page(commission.brief.title, body, slides=False)
