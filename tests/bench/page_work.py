"""What a move of a control costs a browser: all the work of the page's main thread until the new picture is handed on.

A clock round a handler sees its script and, when layout is forced, layout; it never sees painting, which comes later,
and on a busy machine it counts the work of strangers. So moves are made one a frame while the browser keeps a trace, and
of every task that the main thread runs for a move (script, style, layout, painting, layers, rubbish collection) its
processor seconds are summed. Drawing the layers into pixels is other threads' work, which holds up no slider; it is
summed apart. The trace itself, the frame and the mark that begins a move cost time too: a move that changes nothing, made
in the same way, shows how much, and is printed beside the others without being subtracted.
"""

from __future__ import annotations

import json
from dataclasses import dataclass

import numpy as np

TRACED = ["toplevel", "devtools.timeline", "blink.user_timing"]
UNTIL_LAID_OUT = {
    "EventDispatch",
    "UpdateLayoutTree",
    "Layout",
}  # a handler, style, layout: what a clock with forced layout sees
MARK, REST = "a move begins", "all moves are over"
# A control is moved at random, as a hand would. Two frames later its picture has been handed to the screen.
_PACED = """async ([begins, over, count]) => {
  const frame = () => new Promise(requestAnimationFrame), step = STEP;
  await frame(), await frame();
  for (let k = 0; k < count; k++) {
    await frame();
    performance.mark(begins);
    step(k);
    await frame(), await frame();
  }
  performance.mark(over);
}"""
MOVE = """(() => {
  const section = document.getElementById(%r), controls = [...section.querySelectorAll("[data-input]")];
  section.scrollIntoView();
  let seed = 7;
  const random = (count) => (seed = (seed * 48271) %% 2147483647) %% count;
  return () => {
    const control = controls[random(controls.length)];
    if (control.type === "range") control.value = random(1 + Number(control.max));
    else if (control.type === "checkbox") control.checked = !control.checked;
    else control.selectedIndex = random(control.options.length);
    control.dispatchEvent(new Event("input"));
  };
})()"""
NOTHING = "(() => () => document.body.dispatchEvent(new Event('nothing')))()"
SWAP = "(() => { const image = document.querySelector('img'); return (k) => { image.src = frames[k % frames.length]; }; })()"
# Plain arithmetic, to see what an emulation of a slower processor really does to work that waits for nothing.
LOOP = """() => {
  let x = 1;
  return Array.from({ length: 30 }, () => {
    const start = performance.now();
    for (let k = 0; k < 3e5; k++) x = (x * 48271) % 2147483647;
    return performance.now() - start + (x < 0);
  });
}"""


@dataclass(frozen=True)
class Work:
    """Processor milliseconds per move: of the page's main thread in all, until laid out, and of all other threads that drew."""

    main: np.ndarray
    laid_out: np.ndarray
    others: np.ndarray

    def told(self) -> str:
        """One line for a table."""
        return f"{spread(self.main)}; until laid out {spread(self.laid_out)}; other threads, mean {self.others.mean():4.1f} ms"


def spread(values: np.ndarray, times: float = 1.0) -> str:
    """Median, the value that nineteen in twenty stay below, and the largest; in ms."""
    low, high, most = times * np.median(values), times * np.percentile(values, 95), times * values.max()
    return f"median {low:5.2f} p95 {high:5.2f} most {most:5.2f} ms"


def work(browser, page, move: str, count: int) -> Work:
    """The work of ``count`` moves of a page; ``move`` is a script that gives a function to make one."""
    browser.start_tracing(page=page, categories=TRACED)
    page.evaluate(_PACED.replace("STEP", move), [MARK, REST, count])
    events = json.loads(browser.stop_tracing())["traceEvents"]
    marks = sorted((event for event in events if event["name"] in (MARK, REST)), key=lambda event: event["ts"])
    begins = np.array([mark["ts"] for mark in marks])
    assert len(begins) == count + 1
    main, laid_out, others = np.zeros(count), np.zeros(count), np.zeros(count)
    for event in events:
        part, whole = event["name"] in UNTIL_LAID_OUT, event["name"] == "ThreadControllerImpl::RunTask"
        if event["ph"] != "X" or not (part or whole):
            continue
        # The mark lies within the task that makes the move, so a task belongs to the last mark before its end.
        number = int(np.searchsorted(begins, event["ts"] + event["dur"])) - 1
        if 0 <= number < count:
            own = (event["pid"], event["tid"]) == (marks[0]["pid"], marks[0]["tid"])
            if part and own:
                laid_out[number] += event["tdur"] / 1e3
            elif whole:
                (main if own else others)[number] += event.get("tdur", 0) / 1e3
    return Work(main, laid_out, others)
