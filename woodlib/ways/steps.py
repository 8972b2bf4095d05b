"""One step of the work: what it needs, what it makes and what it takes away."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from ..errors import InputError, Problems
from ..units import shown
from ..units.exact import read_name


@dataclass(frozen=True, init=False)
class Step:
    """One cut: what it rides on or is measured from, what it makes, and what it takes away.

    ``needs``, ``makes`` and ``removes`` name faces, edges, ends or marks, such as ``"square edge"``.

    >>> Step("bevel the long edge", needs=["flat face"], removes=["square edge"]).removes
    frozenset({'square edge'})
    """

    name: str
    needs: frozenset[str]
    makes: frozenset[str]
    removes: frozenset[str]

    def __init__(
        self, name: str, needs: Iterable[str] = (), makes: Iterable[str] = (), removes: Iterable[str] = ()
    ) -> None:
        problems = Problems()
        object.__setattr__(self, "name", read_name(problems, "name of the step", name, 80))
        for entry, faces in (("needs", needs), ("makes", makes), ("removes", removes)):
            object.__setattr__(self, entry, read_faces(problems, f"{entry} of {name!r}", faces))
        problems.raise_if_any()
        if both_ways := self.makes & self.removes:
            raise InputError(
                f"step {shown(self.name)} both makes and removes {shown(min(both_ways))}; keep one of the two."
            )

    def after(self, present: frozenset[str]) -> frozenset[str]:
        """What is there once the step is done."""
        return (present - self.removes) | self.makes


def read_faces(problems: Problems, name: str, faces: object) -> frozenset[str]:
    """Names of faces, edges, ends or marks; a sentence for what is none."""
    if isinstance(faces, str) or not isinstance(faces, Iterable):
        problems.add(f"{name} is {shown(faces)}; write a list of faces such as ['square edge'].")
        return frozenset()
    return frozenset(read_name(problems, name, face) for face in faces)


CROSSCUT = Step("crosscut the boards to rough length", makes=["rough lengths"])
SQUARE_EDGE, SQUARE_ENDS, TOGETHER = "square edge", "square ends", "piece together"
