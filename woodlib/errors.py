"""What woodlib says when it is given something it cannot use.

One base class, so that a notebook or the command line can catch everything the kit says on purpose;
each error is also the builtin that a Python reader would expect.
"""

from __future__ import annotations


class WoodlibError(Exception):
    """Base of every error that woodlib raises on purpose; its text is meant for a maker to read."""


class InputError(WoodlibError, ValueError):
    """One or more inputs cannot be used. ``problems`` holds one sentence per bad input."""

    def __init__(self, *problems: str) -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join(self.problems))


class MissingDataError(WoodlibError, LookupError):
    """A value that a calculation needs is not in any table the kit carries."""


class Problems:
    """Collect every bad input, then raise them together.

    >>> problems = Problems()
    >>> problems.add("width is -3 mm; write a width above 0, for example 18 in.")
    >>> problems.raise_if_any()
    Traceback (most recent call last):
    ...
    woodlib.errors.InputError: width is -3 mm; write a width above 0, for example 18 in.
    """

    def __init__(self) -> None:
        self.sentences: list[str] = []

    def add(self, sentence: str) -> None:
        """Remember one sentence: what was wrong, what is accepted, how to fix it."""
        self.sentences.append(sentence)

    def absorb(self, error: InputError, where: str = "") -> None:
        """Take over the sentences of an error met further in, with the place put in front."""
        self.sentences.extend(f"{where}{sentence}" for sentence in error.problems)

    def raise_if_any(self) -> None:
        """Raise :class:`InputError` with all sentences, or do nothing when there are none."""
        if self.sentences:
            raise InputError(*self.sentences)
