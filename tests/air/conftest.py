"""Fixtures of the air tests: a writer of synthetic weather files and of small logs."""

from __future__ import annotations

import runpy
from pathlib import Path

import pytest

_EPW = runpy.run_path(str(Path(__file__).with_name("epw.py")))


@pytest.fixture
def epw():
    """The module that writes synthetic EPW files, as a name -> function mapping."""
    return _EPW


@pytest.fixture
def write_log(tmp_path):
    """Write text (or bytes) to a file and return its path."""

    def write(content: str | bytes, encoding: str = "utf-8", name: str = "log.csv") -> Path:
        path = tmp_path / name
        path.write_bytes(content if isinstance(content, bytes) else content.encode(encoding))
        return path

    return write
