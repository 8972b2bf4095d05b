"""The steps by which a page without Python makes decided numbers anew: one list for Python and for the page.

A step has two operands, ``a`` and ``b``; one that needs a single number is given it twice. Its Python form takes plain
numbers and numbers at many states alike.
"""

from __future__ import annotations

import operator
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

EDGE_SHARE = 1e-7
"""An edge counts as reached this share before it, so that a table cannot fall short of it by its own rounding."""


@dataclass(frozen=True)
class Step:
    """How Python and the page's script compute a step, and the NumPy function that it stands for."""

    python: Callable[[Any, Any], Any]
    script: str
    ufunc: str = ""


def _reached(a: Any, b: Any) -> Any:
    return (a >= b - EDGE_SHARE * np.maximum(np.abs(a), np.abs(b))) * 1.0


def _of_one(function: Callable[[Any], Any]) -> Callable[[Any, Any], Any]:
    return lambda a, _b: function(a)


STEPS: dict[str, Step] = {
    "+": Step(operator.add, "a + b", "add"),
    "-": Step(operator.sub, "a - b", "subtract"),
    "*": Step(operator.mul, "a * b", "multiply"),
    "/": Step(operator.truediv, "a / b", "divide"),
    "larger": Step(np.maximum, "Math.max(a, b)", "maximum"),
    "smaller": Step(np.minimum, "Math.min(a, b)", "minimum"),
    "reached": Step(_reached, f"a >= b - {EDGE_SHARE} * Math.max(Math.abs(a), Math.abs(b)) ? 1 : 0"),
    "power": Step(operator.pow, "a ** b", "power"),
    "size": Step(_of_one(np.abs), "Math.abs(a)", "absolute"),
    "root": Step(_of_one(np.sqrt), "Math.sqrt(a)", "sqrt"),
    **{
        name: Step(_of_one(getattr(np, name)), f"Math.{name}(a)", name)
        for name in ("exp", "log", "sin", "cos", "tan", "tanh", "log1p", "expm1")
    },
}


def script_table() -> str:
    """The steps as an object of functions for the page's script."""
    return "{" + ", ".join(f'"{name}": (a, b) => {step.script}' for name, step in STEPS.items()) + "}"
