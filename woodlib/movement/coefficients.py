"""Strain along one axis of the wood from its shrinkage and a change of moisture.

Two published laws, same call shape, and the path that joins them:

* ``linear_strain``: C (M_to - M_from), Wood Handbook FPL-GTR-190 (2010) Eq. 13-2, printed for 6 to 14 % MC.
* ``total_shrinkage_strain``: (M_to - M_from) / (F/S - F + M_from), Wood Handbook Eq. 13-3 (number and wording from
  memory); neither moisture above fibre saturation F.
* ``movement_strain``: the first inside 6 to 14 %, the second outside.

How the path is composed: moisture goes from ``mc_from`` to the nearest point of 6..14 %, through that window, and out
again to ``mc_to``; stretches of the three legs are multiplied. Each leg starts where the last ended, so the result has
no jump at 6, at 14 or at fibre saturation. Eq. 13-3 composes exactly with itself; Eq. 13-2 refers each change to the
size at its own start, so a trip there and back inside the window misses the start by (C dM)^2, below 0.1 % of the size.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

FIBRE_SATURATION_PERCENT = 30.0  # working value, Wood Handbook chapter 4; 25-30 % for most woods
LINEAR_FROM_PERCENT = 6.0  # Wood Handbook Eq. 13-2: range of the coefficients
LINEAR_TO_PERCENT = 14.0
_BLOCK = 12288  # numbers worked on at a time, so that intermediate results stay in the processor's cache


def linear_strain(coefficient, shrinkage, mc_from, mc_to, fibre_saturation=FIBRE_SATURATION_PERCENT):
    """Strain by the handbook coefficient alone, for moistures of 6 to 14 %.

    Parameters: ``coefficient`` per % MC; ``shrinkage`` and ``fibre_saturation`` are not used (same call shape);
    ``mc_from``, ``mc_to`` in %. All broadcast. Returns strain, positive when the wood grows.

    >>> round(232 * linear_strain(0.00245, None, 8, 11), 3)  # white fir, mm
    1.705
    """
    return coefficient * (mc_to - mc_from)


def total_shrinkage_strain(coefficient, shrinkage, mc_from, mc_to, fibre_saturation=FIBRE_SATURATION_PERCENT):
    """Strain by the total-shrinkage form alone, from oven-dry to fibre saturation.

    Parameters: ``coefficient`` is not used (same call shape); ``shrinkage`` green to oven-dry as a fraction;
    ``mc_from``, ``mc_to``, ``fibre_saturation`` in %. All broadcast. Returns strain, positive when the wood grows.

    >>> round(float(total_shrinkage_strain(None, 0.105, 30, 0)), 6)  # green to oven-dry gives the shrinkage back
    -0.105
    """
    start, end = np.minimum(mc_from, fibre_saturation), np.minimum(mc_to, fibre_saturation)
    return shrinkage * (end - start) / (fibre_saturation * (1.0 - shrinkage) + shrinkage * start)


def _joined_strain(coefficient, shrinkage, mc_from, mc_to, fibre_saturation):
    start, end = np.minimum(mc_from, fibre_saturation), np.minimum(mc_to, fibre_saturation)
    enter = np.minimum(np.maximum(start, LINEAR_FROM_PERCENT), LINEAR_TO_PERCENT)
    leave = np.minimum(np.maximum(end, LINEAR_FROM_PERCENT), LINEAR_TO_PERCENT)
    dry = fibre_saturation * (1.0 - shrinkage)  # a size at moisture M is proportional to dry + shrinkage M
    outside = (dry + shrinkage * enter) * (dry + shrinkage * end)
    outside = outside / ((dry + shrinkage * start) * (dry + shrinkage * leave))
    return outside * (1.0 + coefficient * (leave - enter)) - 1.0


def _inside_window(*moistures) -> bool:
    return all(
        np.size(moisture) and np.min(moisture) >= LINEAR_FROM_PERCENT and np.max(moisture) <= LINEAR_TO_PERCENT
        for moisture in moistures
    )


def _in_blocks(kernel: Callable, *arguments):
    """Call an elementwise ``kernel`` block by block on broadcast arguments; same numbers, fewer trips to memory."""
    shape = np.broadcast_shapes(*(np.shape(argument) for argument in arguments))
    result = np.empty(shape)
    whole = [np.broadcast_to(argument, shape).reshape(-1) if np.ndim(argument) else argument for argument in arguments]
    flat = result.reshape(-1)
    for start in range(0, flat.size, _BLOCK):
        block = slice(start, start + _BLOCK)
        flat[block] = kernel(*(piece[block] if np.ndim(piece) else piece for piece in whole))
    return result


def movement_strain(coefficient, shrinkage, mc_from, mc_to, fibre_saturation=FIBRE_SATURATION_PERCENT):
    """Strain along one axis of the wood for any change of moisture.

    Parameters: ``coefficient`` per % MC; ``shrinkage`` green to oven-dry as a fraction; ``mc_from``, ``mc_to`` and
    ``fibre_saturation`` in %. All broadcast; other array types that follow NumPy's protocols pass through.
    Returns strain, positive when the wood grows; nothing changes above fibre saturation.

    >>> round(float(movement_strain(0.00365, 0.105, 6, 9)), 5)  # white oak, tangential, inside 6-14 %
    0.01095
    >>> round(float(movement_strain(0.00365, 0.105, 9, 4)), 5)  # leaves the window at 6 %
    -0.01851
    >>> float(movement_strain(0.00365, 0.105, 40, 60))
    0.0
    """
    arguments = (coefficient, shrinkage, mc_from, mc_to, fibre_saturation)
    if not all(isinstance(argument, (float, int, np.ndarray)) for argument in arguments):
        return _joined_strain(*arguments)
    if _inside_window(mc_from, mc_to):
        return linear_strain(*arguments)
    return _in_blocks(_joined_strain, *arguments) if np.size(mc_to) > _BLOCK else _joined_strain(*arguments)
