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


MOST_TOLD = 40
"""Sentences of one answer: a longer list, of a table in the wrong form perhaps, is read by nobody."""


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
        """Raise :class:`InputError` with all sentences, of many the first, or do nothing when there are none."""
        if len(self.sentences) > MOST_TOLD:
            more = f"There are {len(self.sentences) - MOST_TOLD} more like these; mend the first ones and try again."
            raise InputError(*self.sentences[:MOST_TOLD], more)
        if self.sentences:
            raise InputError(*self.sentences)


NET = (TypeError, ValueError, AttributeError, LookupError, ArithmeticError, RecursionError, OSError)


def netted(public):
    """A public function, or class, of which a slip such as a list where a board belongs is answered in a sentence.

    What can be foreseen has its own sentence further in; the first error stays readable as the cause.

    >>> netted(len)(5)
    Traceback (most recent call last):
    ...
    woodlib.errors.InputError: len cannot use what it was given, 5; it takes (obj, /) (object of type 'int' has no len()).
    """
    import inspect

    if inspect.isclass(public):
        if "__init__" in vars(public) and not issubclass(public, Exception) and public.__module__.startswith("woodlib"):
            setattr(public, "__init__", _net(vars(public)["__init__"], public.__name__))  # noqa: B010
        return public
    return _net(public, public.__name__) if inspect.isroutine(public) else public


def _net(function, name: str):
    from functools import wraps

    @wraps(function)
    def caught(*args, **kwargs):
        try:
            return function(*args, **kwargs)
        except WoodlibError:
            raise
        except NET as error:
            raise InputError(_gross(name, function, args, kwargs, error)) from error

    return caught


def _gross(name: str, function, args: tuple, kwargs: dict, error: Exception) -> str:
    import inspect
    from reprlib import repr as short

    given = [short(value) for value in (args[1:] if function.__name__ == "__init__" else args)]
    given += [f"{key}={short(value)}" for key, value in kwargs.items()]
    takes = str(inspect.signature(function)).split(" -> ")[0].replace("(self, ", "(")
    why = str(error).splitlines()[0] if str(error) else type(error).__name__
    return f"{name} cannot use what it was given, {', '.join(given) or 'nothing'}; it takes {takes} ({why})."
