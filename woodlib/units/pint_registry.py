"""The kit's one pint registry: made when a quantity is first asked for, because making it takes half a second."""

from __future__ import annotations

import pint

registry: pint.UnitRegistry = pint.UnitRegistry()
"""A quantity from another registry is taken over by the name of its unit."""

Quantity = registry.Quantity
