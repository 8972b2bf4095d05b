"""How much of the matrix is tried: a sample in the usual run, all of it with ``--every 1``."""

from __future__ import annotations

import pytest


def pytest_addoption(parser) -> None:
    """Every how many-th brief of the matrix is taken."""
    parser.addoption("--every", type=int, default=9, help="try every N-th brief of the matrix; 1 tries all of them")


def pytest_generate_tests(metafunc) -> None:
    """A test for each brief that is taken."""
    if "matrix_brief" in metafunc.fixturenames:
        from commissions.matrix import matrix

        taken = list(matrix())[:: metafunc.config.getoption("--every", 9)]
        metafunc.parametrize(
            "matrix_brief", [text for _, text in taken], ids=[name for name, _ in taken], indirect=True
        )


@pytest.fixture
def matrix_brief(request, tmp_path):
    """A brief of the matrix in a file."""
    path = tmp_path / "piece.toml"
    path.write_text(request.param, encoding="utf-8")
    return path
