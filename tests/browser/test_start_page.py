"""What somebody sees who opens the kit cold: the start page alone, nothing laid over it, and no code to read."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from browser.conftest import PROJECT, SECONDS, server_settings, wait_for
from browser.lab import WAIT

from woodlib.opening import SETTINGS, start_options


@pytest.fixture(scope="module")
def cold_lab(tmp_path_factory):
    """A JupyterLab started with the options and settings of the opening, in a home where nobody was before."""
    home = tmp_path_factory.mktemp("cold")
    log, token = home / "server.log", "cold"
    options = start_options(Path(PROJECT) / "notebooks" / "00-start-here.ipynb")
    root = ["--allow-root"] if getattr(os, "geteuid", lambda: 1)() == 0 else []
    command = [sys.executable, "-m", "jupyterlab", "--no-browser", "--ServerApp.port=0", *options, *root]
    own = {**server_settings(home), "JUPYTER_CONFIG_PATH": str(SETTINGS)}
    with log.open("w") as written:
        server = subprocess.Popen(
            [*command, f"--IdentityProvider.token={token}"], cwd=home, env=own, stdout=written, stderr=written
        )
        try:
            yield wait_for(server, home / "runtime", token, log)
        finally:
            server.terminate()
            server.wait(timeout=SECONDS)


def test_the_start_page_opens_alone_says_what_to_press_and_leads_on(cold_lab, browser_page):
    page = browser_page.page
    page.goto(f"{cold_lab}?token=cold")
    page.get_by_role("strong").filter(has_text="Shift and Enter").wait_for(timeout=WAIT)
    assert "/doc/tree/00-start-here.ipynb" in page.url
    page.wait_for_timeout(3000)  # a question about news would have come up by now
    assert page.locator(".jp-toast-message, .Toastify__toast").count() == 0
    assert page.locator(".jp-CodeCell:visible .jp-InputArea-editor:visible").count() == 0  # all code is folded
    page.locator(".jp-Notebook").click(position={"x": 5, "y": 5})
    for _ in range(6):
        page.keyboard.press("Shift+Enter")
    page.get_by_text("Ready.").wait_for(timeout=WAIT)
    page.get_by_text("Check my answer").wait_for(timeout=WAIT)
    page.get_by_label("Width", exact=True).first.check()
    page.get_by_text("Check my answer").click()
    page.get_by_text("Right: Width.").wait_for(timeout=WAIT)
    assert browser_page.errors == []
    page.get_by_role("link", name="Reading a board").click(timeout=WAIT)
    page.get_by_role("heading", name="Reading a board").wait_for(timeout=WAIT)
