"""A lesson in JupyterLab: say it first, with the Enter key; the study opens, keeps it, and says when its kernel has gone."""

from __future__ import annotations

import json
import re
from urllib.request import Request, urlopen

import nbformat
from browser.lab import WAIT, run_all
from nbformat.v4 import new_code_cell, new_notebook

from woodlib.live import BRING_TO_LIFE
from woodlib.live.controls import KERNEL_GONE

KERNEL = {"kernelspec": {"name": "python3", "display_name": "Python 3", "language": "python"}}
ASK = """\
from woodlib.lesson import predict
predict("air-in-the-lab", "How humid is the room?", kind="humidity")"""
STUDY = """\
from woodlib.lesson import curtain
from woodlib.live import show
from woodlib.studies import find_study
panel = show(find_study("moisture-from-air"))
curtain(panel, "air-in-the-lab")"""
TRY = """\
from woodlib.lesson import check
check("half", "Half an inch in mm?", "1/2 in", kind="length", tolerance="0.3 mm")"""


def restart(page) -> None:
    """Restart the kernel by the menu and wait until it is there again."""
    page.get_by_role("menuitem", name="Kernel", exact=True).click()
    page.locator(".lm-Menu-itemLabel", has_text="Restart Kernel…").first.click()
    page.get_by_role("dialog").get_by_role("button", name="Confirm Kernel Restart").click()
    page.get_by_text("Python 3 (ipykernel) | Idle").wait_for(timeout=WAIT)


def test_predict_move_restart_and_reopen(jupyter_server, browser_page):
    cells = [new_code_cell(cell) for cell in (ASK, STUDY, TRY)]
    nbformat.write(new_notebook(cells=cells, metadata=KERNEL), jupyter_server.folder / "lesson.ipynb")
    page = browser_page.page
    page.goto(jupyter_server.url("lesson.ipynb"))
    run_all(page)
    panel = page.locator(".wl-panel svg.wl")
    page.get_by_text("Say first what you expect: ").wait_for(timeout=WAIT)
    assert panel.count() == 0 and page.get_by_text("then open this").filter(visible=True).count() == 0
    answer = page.get_by_label("Your answer").first
    answer.fill("about 55 %")
    answer.press("Enter")
    panel.wait_for(timeout=WAIT)
    page.get_by_text("You said: about 55 %", exact=True).wait_for(timeout=WAIT)
    exercise = page.get_by_label("Your answer").last
    exercise.fill("13mm")
    exercise.press("Enter")
    page.get_by_text("Right: 1/2 in (12.5 mm).").wait_for(timeout=WAIT)

    restart(page)
    page.wait_for_timeout(1000)
    says = page.evaluate("getComputedStyle(document.querySelector('.wl-whole:has(.wl-panel)'), '::before').content")
    assert KERNEL_GONE in says
    broken = "[...document.querySelectorAll('.jupyter-widgets-disconnected')].map((node) => getComputedStyle(node, '::before'))"
    icons = page.evaluate(
        f"{broken}.filter((style) => style.content !== 'none' && style.fontFamily.includes('Awesome')).length"
    )
    assert icons == 0

    run_all(page)
    page.get_by_text("You said: about 55 %", exact=True).wait_for(timeout=WAIT)
    page.keyboard.press("Control+s")
    page.wait_for_timeout(1500)
    assert browser_page.errors == []

    forget_kernels(jupyter_server)
    page.goto(jupyter_server.url("lesson.ipynb"))
    page.get_by_text("Python 3 (ipykernel) | Idle").wait_for(timeout=WAIT)
    still = page.get_by_text("Say first what you expect, then open this.")
    still.wait_for(timeout=WAIT)
    still.click()
    page.get_by_text(BRING_TO_LIFE).wait_for()
    assert page.locator("strong", has_text="Half an inch in mm?").is_visible()  # as a question on paper
    assert page.get_by_text(re.compile("Loading widget|Error displaying")).filter(visible=True).count() == 0


def forget_kernels(server) -> None:
    """End every kernel, as a computer does that is switched off."""

    def ask(path: str, method: str) -> bytes:
        request = Request(
            f"{server.address}api/{path}", method=method, headers={"Authorization": f"token {server.token}"}
        )
        return urlopen(request, timeout=20).read()

    for session in json.loads(ask("sessions", "GET")):
        ask(f"sessions/{session['id']}", "DELETE")
