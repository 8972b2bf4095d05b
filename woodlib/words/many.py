"""A number at many places of the sliders at once: a study's own function, run once, answers for all of them.

A :class:`Many` holds one value per state, or one array per state; whoever computes with it sees the inside of a single
state, whose shapes broadcast as NumPy's do, and the states go along unseen. What differs from state to state cannot be
branched on, made a plain number, or written into a text: that is refused (:class:`Unsteady`), because a page without
Python could not follow it.

>>> width = Many(np.array([0.2, 0.5]))
>>> np.maximum(width * np.array([1.0, 3.0]), 0.4).values.tolist()
[[0.4, 0.6000000000000001], [0.5, 1.5]]
"""

from __future__ import annotations

import operator
from collections.abc import Callable, Iterator, Sequence
from typing import Any

import numpy as np
from numpy.lib.mixins import NDArrayOperatorsMixin

from ..errors import InputError

BRANCH = (
    "it takes a decision in Python that changes while a slider moves; write the kink with larger(...) or smaller(...), "
    "and choose words, roles and what is shown with pick(...)"
)
PLAIN = (
    "it makes a plain number of one that changes while a slider moves; compute with NumPy's functions in place of "
    "float(...), int(...), round(...), np.asarray(...) and those of math, and write into no array"
)
TEXT = (
    "it writes a number that changes while a slider moves into a text; write numbers with length(...), moisture(...) "
    "and the like, and words with pick(...)"
)
CACHED = "it looks up a number that changes while a slider moves; keep nothing in a cache or a dict by such a number"


class Unsteady(InputError):
    """What was asked of a number differs from one state to another; ``values`` tells the states apart, shape (states,)."""

    def __init__(self, reason: str, values: np.ndarray) -> None:
        super().__init__(f"A study cannot be asked at many places of its sliders at once: {reason}.")
        self.reason, self.values = reason, values


class Many(NDArrayOperatorsMixin):
    """A number, or an array, at every state: ``values`` has the shape (states, ...)."""

    __slots__ = ("values",)

    def __init__(self, values: np.ndarray) -> None:
        self.values = values

    @property
    def shape(self) -> tuple[int, ...]:
        """The shape within a state."""
        return self.values.shape[1:]

    @property
    def ndim(self) -> int:
        """The number of axes within a state."""
        return self.values.ndim - 1

    @property
    def size(self) -> int:
        """How many numbers a state holds."""
        return int(np.prod(self.shape))

    @property
    def T(self) -> Many:
        """The axes within a state in reverse order."""
        return Many(self.values.transpose(0, *range(self.ndim, 0, -1)))

    def __len__(self) -> int:
        return self.values.shape[1]

    def __getitem__(self, key: Any) -> Many:
        return Many(self.values[(slice(None), *(key if isinstance(key, tuple) else (key,)))])

    def __iter__(self) -> Iterator[Many]:
        return (self[place] for place in range(len(self)))

    def __repr__(self) -> str:
        return f"Many({self.values!r})"

    def reshape(self, *shape: Any) -> Many:
        """The same numbers in another shape within a state."""
        return Many(self.values.reshape(len(self.values), *(shape[0] if isinstance(shape[0], tuple) else shape)))

    def ravel(self) -> Many:
        """The numbers of a state in one row."""
        return self.reshape(-1)

    def sum(self, axis: Any = None) -> Many:
        """As ``np.sum``."""
        return np.sum(self, axis=axis)

    def max(self, axis: Any = None) -> Many:
        """As ``np.max``."""
        return np.max(self, axis=axis)

    def min(self, axis: Any = None) -> Many:
        """As ``np.min``."""
        return np.min(self, axis=axis)

    def any(self, axis: Any = None) -> Many:
        """As ``np.any``."""
        return np.any(self, axis=axis)

    def all(self, axis: Any = None) -> Many:
        """As ``np.all``."""
        return np.all(self, axis=axis)

    def astype(self, kind: Any) -> Many:
        """As for arrays."""
        return Many(self.values.astype(kind))

    def agreed(self, reason: str = PLAIN) -> Any:
        """The value that all states share; :class:`Unsteady` for ``reason`` where they do not."""
        if self.ndim:
            raise TypeError("an array at many states is no single number")
        if (self.values != self.values[0]).any():
            raise Unsteady(reason, self.values)
        return self.values[0]

    def __bool__(self) -> bool:
        return bool(self.astype(bool).agreed(BRANCH))

    def __float__(self) -> float:
        return float(self.agreed())

    def __int__(self) -> int:
        return int(self.agreed())

    def __index__(self) -> int:
        return operator.index(self.agreed())

    def __round__(self, digits: int | None = None) -> Any:
        return round(float(self), digits)

    def __format__(self, spec: str) -> str:
        return format(self.agreed(TEXT), spec)

    def __hash__(self) -> int:
        return hash(self.agreed(CACHED))

    def __array__(self, *_args: Any, **_options: Any) -> np.ndarray:
        raise Unsteady(PLAIN, self.values.reshape(len(self.values), -1)[:, 0])

    def __array_ufunc__(self, ufunc: np.ufunc, method: str, *inputs: Any, **options: Any) -> Any:
        targets = options.pop("out", ())
        if any(isinstance(target, np.ndarray) for target in targets):
            raise Unsteady(PLAIN, self.values.reshape(len(self.values), -1)[:, 0])
        for value in inputs:
            if type(value) not in _QUICK and not isinstance(value, _NUMBERS):
                if not isinstance(value, list | tuple):
                    return NotImplemented  # a decided number keeps its record
                inputs = tuple(map(_as_array, inputs))
        if method == "outer":
            first, second = inputs
            return ufunc(first[(..., *(None,) * _depth(second))] if _depth(first) else first, second, **options)
        if method in ("reduce", "accumulate"):
            return _along_axes(getattr(ufunc, method))(*inputs, **{"axis": 0, **options})
        if method != "__call__":
            return NotImplemented
        if ufunc is np.matmul:
            return _matmul(*inputs)
        found = ufunc(*_lifted(inputs), **options)
        return tuple(map(Many, found)) if isinstance(found, tuple) else Many(found)

    def __array_function__(self, function: Callable, _types: Any, arguments: Any, options: Any) -> Any:
        own = _FUNCTIONS.get(function)
        return own(*arguments, **options) if own else _state_by_state(function, arguments, options)


_NUMBERS = (Many, float, int, np.ndarray, np.generic)
_QUICK = frozenset({Many, float, np.ndarray, np.float64})


def at_each(function: Callable[[float], Any], number: Any) -> Any:
    """A function that takes one plain number at a time, at a number or at every different value of a :class:`Many`.

    It returns a number, an array, or a tuple of these; dear ones keep their answers by the value (``lru_cache``).

    >>> at_each(lambda width: (width, [width, 1.0]), Many(np.array([3.0, 4.0, 3.0])))[1].values.tolist()
    [[3.0, 1.0], [4.0, 1.0], [3.0, 1.0]]
    """
    if not isinstance(number, Many):
        return function(number)
    values, back = np.unique(number.values, return_inverse=True)

    def gathered(found: list[Any]) -> Any:
        if isinstance(found[0], tuple):
            return tuple(gathered(list(part)) for part in zip(*found, strict=True))
        return Many(np.array(found)[back])

    return gathered([function(float(value)) for value in values])


def _depth(value: Any) -> int:
    """Axes within a state."""
    kind = type(value)
    return value.values.ndim - 1 if kind is Many else 0 if kind is float else np.ndim(value)


def _raised(value: Any, depth: int) -> np.ndarray:
    """The values of a state with as many axes as ``depth``, the states before them; plain numbers stay plain."""
    if not isinstance(value, Many):
        return value
    held = value.values
    missing = depth + 1 - held.ndim
    return held.reshape(held.shape[:1] + (1,) * missing + held.shape[1:]) if missing else held


def _lifted(values: Sequence[Any]) -> list[Any]:
    depth = max(map(_depth, values))
    return [_raised(value, depth) for value in values]


def _states(values: Sequence[Any]) -> int:
    return next(len(value.values) for value in values if isinstance(value, Many))


def _full(values: Sequence[Any]) -> list[np.ndarray]:
    """The values of each with the states as first axis, plain ones repeated."""
    count = _states(values)
    return [
        value.values
        if isinstance(value, Many)
        else np.broadcast_to(np.asarray(value, float), (count, *np.shape(value)))
        for value in map(_gathered, values)
    ]


def _gathered(value: Any) -> Any:
    """Lists that hold numbers at many states, as one of these."""
    return np.stack([_gathered(part) for part in value]) if _holds_many(value) else value


def _as_array(value: Any) -> Any:
    gathered = _gathered(value)
    return np.asarray(gathered) if isinstance(gathered, list | tuple) else gathered


def _holds_many(value: Any) -> bool:
    return isinstance(value, list | tuple) and any(isinstance(part, Many) or _holds_many(part) for part in value)


def _matmul(first: Any, second: Any) -> Many:
    row, column = _depth(first) == 1, _depth(second) == 1
    left, right = _lifted([first[None, :] if row else first, second[:, None] if column else second])
    found = left @ right
    found = found[..., 0] if column else found
    return Many(found[..., 0] if row and column else found[..., 0, :] if row else found)


def _along_axes(function: Callable) -> Callable:
    """A function along axes, moved behind the states."""

    def inner(value: Many, axis: Any = None, **options: Any) -> Many:
        if axis is None:
            return Many(function(value.values.reshape(len(value.values), -1), axis=1, **options))
        moved = tuple(one + (one >= 0) for one in (axis if isinstance(axis, tuple) else (axis,)))
        return Many(function(value.values, axis=moved if isinstance(axis, tuple) else moved[0], **options))

    return inner


def _joined(function: Callable) -> Callable:
    """A function that joins arrays along an axis, moved behind the states."""

    def join(values: Sequence[Any], axis: int = 0) -> Many:
        full = _full(list(values))
        return Many(function(np.broadcast_arrays(*full) if function is np.stack else full, axis=axis + (axis >= 0)))

    return join


def _column_stack(values: Sequence[Any]) -> Many:
    full = _full(list(values))
    return Many(np.concatenate([value[..., None] if value.ndim == 2 else value for value in full], axis=-1))


def _vstack(values: Sequence[Any]) -> Many:
    full = _full(list(values))
    return Many(np.concatenate([value[:, None] if value.ndim == 2 else value for value in full], axis=1))


def _elementwise(function: Callable) -> Callable:
    return lambda *values, **options: Many(function(*_lifted([_gathered(value) for value in values]), **options))


def _clip(value: Any, low: Any, high: Any) -> Any:
    return np.minimum(np.maximum(value, low), high)


def _broadcast_to(value: Many, shape: Any) -> Many:
    shape = shape if isinstance(shape, tuple) else (shape,)
    return Many(np.broadcast_to(_raised(value, len(shape)), (len(value.values), *shape)))


def _interp(place: Any, known: Any, values: Any, **options: Any) -> Many:
    if isinstance(known, Many) or isinstance(values, Many):
        return _state_by_state(np.interp, (place, known, values), options)
    return Many(np.interp(place.values, known, values, **options))


def _state_by_state(function: Callable, arguments: Any, options: Any) -> Any:
    """Any other function of NumPy, one state after the other: right for all of them, slow for many states."""

    def at(part: Any, state: int) -> Any:
        if isinstance(part, Many):
            return part.values[state]
        if isinstance(part, list | tuple):
            return type(part)([at(inner, state) for inner in part])
        return {key: at(inner, state) for key, inner in part.items()} if isinstance(part, dict) else part

    def found(part: Any) -> list[Many]:
        if isinstance(part, Many):
            return [part]
        inner = part.values() if isinstance(part, dict) else part if isinstance(part, list | tuple) else ()
        return [many for one in inner for many in found(one)]

    count = _states(found([arguments, options]))
    return Many(np.array([function(*at(arguments, state), **at(options, state)) for state in range(count)]))


_FUNCTIONS: dict[Callable, Callable] = {
    **{
        function: _along_axes(function)
        for function in (np.sum, np.prod, np.max, np.min, np.mean, np.any, np.all, np.cumsum, np.flip)
    },
    **{function: _joined(function) for function in (np.concatenate, np.stack)},
    **{function: _elementwise(function) for function in (np.where, np.sinc, np.nan_to_num)},
    np.column_stack: _column_stack,
    np.vstack: _vstack,
    np.clip: _clip,
    np.interp: _interp,
    np.outer: lambda first, second: np.multiply.outer(first, second),
    np.broadcast_to: _broadcast_to,
    np.ravel: Many.ravel,
    np.shape: lambda value: value.shape,
    np.ndim: lambda value: value.ndim,
    np.size: lambda value: value.size,
}
