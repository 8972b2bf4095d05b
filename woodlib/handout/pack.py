"""A frozen table as text that a page carries."""

from __future__ import annotations

import base64
import gzip
import json
from typing import Any


def packed(payload: dict[str, Any]) -> str:
    """A table as gzip in base64; the same table always gives the same text.

    All shapes of a kind stand together, because they resemble each other: {kind: [of every shape]}.
    """
    shapes = payload["shapes"]
    by_kind = {kind: [shape[kind] for shape in shapes] for kind in shapes[0]}
    text = json.dumps(payload | {"shapes": by_kind}, separators=(",", ":"), ensure_ascii=False)
    return base64.b64encode(gzip.compress(text.encode(), 9, mtime=0)).decode()
