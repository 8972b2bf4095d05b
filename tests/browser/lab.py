"""Ways about a JupyterLab that tests have in common."""

from __future__ import annotations

WAIT = 120_000  # ms; starting a kernel on a busy machine


def run_all(page) -> None:
    """Run every cell by the menu, once the kernel is ready: keys pressed earlier can be lost."""
    page.get_by_text("Python 3 (ipykernel) | Idle").wait_for(timeout=WAIT)
    page.get_by_role("menuitem", name="Run", exact=True).click()
    page.get_by_role("menuitem", name="Run All Cells", exact=True).click()
