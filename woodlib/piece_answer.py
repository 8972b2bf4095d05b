"""What a test piece says about its boards, in one line, with the lines that carry it into a brief."""

from __future__ import annotations

from collections.abc import Sequence

from .brief.record import TestPiece
from .brief.values import RING_ANGLES_DEG
from .errors import InputError
from .movement.measured_piece import learn
from .species import find_species
from .units import metres, number_in


def answer(words: Sequence[str], oven_dry: str = "", rings: str = "flatsawn") -> list[str]:
    """The answer to ``WOOD WIDTH MOISTURE WIDTH MOISTURE``; with ``oven_dry`` the moistures are weights.

    >>> print(answer(["white oak", "100 mm", "12 %", "98.9 mm", "8 %"])[0])  # doctest: +ELLIPSIS
    By the test piece these boards move 93 % of the average of white oak, ...
    """
    if len(words) != 5:
        raise InputError(
            f"test-piece takes five things and got {len(words)}: wood, width, moisture, and both again after it dried; "
            'for example "white oak" "100 mm" "12 %" "98.9 mm" "8 %".'
        )
    if rings not in RING_ANGLES_DEG:
        raise InputError(f"--rings is {rings!r}; write one of {', '.join(RING_ANGLES_DEG)}.")
    wood, *ends = words
    first, second = (metres(text, name="width", minimum_m=0.01, maximum_m=1.0) for text in ends[::2])
    if oven_dry:
        before, after, dry = (
            number_in(text, "gram", name="weight", minimum=1.0, maximum=2e4) for text in (*ends[1::2], oven_dry)
        )
        piece = TestPiece(first, second, None, None, before, after, dry)
    else:
        before, after = (
            number_in(text, "percent", name="moisture", default_unit="percent", minimum=0.0, maximum=30.0)
            for text in ends[1::2]
        )
        piece = TestPiece(first, second, before, after)
    said = learn(find_species(wood), [piece.measured(RING_ANGLES_DEG[rings], 1.0)]).in_words()
    kind = "weight" if oven_dry else "moisture"
    named = zip(("first_width", f"first_{kind}", "second_width", f"second_{kind}"), ends, strict=True)
    lines = [*named, ("rings", rings), *([("oven_dry_weight", oven_dry)] if oven_dry else [])]
    return [
        said,
        "For the brief:",
        "[[test_piece]]",
        *(f'{key} = "{value.strip()}"' for key, value in lines),
    ]
