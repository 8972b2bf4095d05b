"""A frozen table as text that a page carries."""

from __future__ import annotations

import base64
import gzip
import json
from typing import Any


def packed(payload: dict[str, Any]) -> str:
    """A table as gzip in base64; the same table always gives the same text."""
    text = json.dumps(payload, separators=(",", ":"), ensure_ascii=False)
    return base64.b64encode(gzip.compress(text.encode(), 9, mtime=0)).decode()
