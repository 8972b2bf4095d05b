"""The ``brief`` command: a documented brief to fill in, or six questions and the first verdicts at once."""

from __future__ import annotations

import sys
from pathlib import Path

from .brief.asking import ask
from .brief.template import template_text, write_new, write_template
from .errors import InputError


def new_brief(file: Path | None, kind: str) -> list[str]:
    """Write a new brief and return what to say of it; with neither file nor kind its six questions are asked first."""
    if file is None and not kind:
        return _asked()
    path = write_template(file or _free(kind), kind)
    return [f"Wrote {path}; change its values, then: python3 -m woodlib verdicts {path}"]


def _asked() -> list[str]:
    from .commission.checked import judged_brief
    from .commission.verdicts import verdict_lines

    print("Six questions; Enter takes what stands in brackets. Everything can be changed in the file afterwards.")
    try:
        answers = ask(input, print)
    except EOFError:
        raise InputError(
            "Nothing more came to read, so no brief was written; run it where you can type, or name a file: "
            "python3 -m woodlib brief seat.toml."
        ) from None
    path = write_new(_free(answers["piece.kind"]), template_text(answers, only=True))
    print(f"\nWrote {path}. Now the ways to build it:\n", flush=True)
    commission = judged_brief(path)
    for remark in dict.fromkeys(commission.brief.remarks):
        print(f"Please check: {remark}", file=sys.stderr)
    return [*verdict_lines(commission), "", f"The client's page: python3 -m woodlib handout {path}"]


def _free(kind: str) -> Path:
    """A name for the file that is not taken yet: seat.toml, seat-2.toml."""
    stem = kind.replace(" ", "-")
    names = (Path(f"{stem}{f'-{place}' if place > 1 else ''}.toml") for place in range(1, 1000))
    return next(name for name in names if not name.exists())
