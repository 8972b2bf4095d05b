"""What a committed notebook looks like: how its outputs are cut down to what matters, and what must hold for each.

Used by ``refresh_notebooks.py``, which writes notebooks in this form, and by the tests, which hold them to it.
"""

from __future__ import annotations

import re

WIDGET_VIEW = "application/vnd.jupyter.widget-view+json"
IGNORED = "nbval-ignore-output"
KERNEL = {"display_name": "Python 3", "language": "python", "name": "python3"}
START = "start here"  # the title of the first notebook, which is no lesson
# The frame of a lesson, in its order; each heading contains its words.
SECTIONS = (
    "predict",
    "slide",
    "what did you see",
    "why",
    "worked example",
    "held against what was measured",
    "decide",
    "exercises",
    "what we learned",
    "the case so far",
    "sources",
    "next",
)
FEWEST_NUMBERS = 3  # outputs with a number in them that the notebook tests compare
WORDS = range(800, 1501)
START_WORDS = range(300, 901)
MOST_LINES = 11  # with the one that is seen

_PICTURE = re.compile(r"data:image/[\w+.-]+;base64,[A-Za-z0-9+/=\s]+")
_MACHINE = {
    "a memory address": re.compile(r"0x[0-9a-fA-F]{6,}"),
    "an absolute path": re.compile(r"(?<![\w.:/])(/(home|root|Users|tmp|work|opt|usr|var|private)/|[A-Z]:\\)"),
    "a process id": re.compile(r"ipykernel_\d+"),
}


def tags(cell) -> list[str]:
    """The tags of a cell."""
    return cell.get("metadata", {}).get("tags", [])


def code_cells(notebook) -> list:
    """The code cells, in order."""
    return [cell for cell in notebook.cells if cell.cell_type == "code"]


def output_text(output) -> str:
    """All that an output says in words, without the bytes of pictures."""
    data = output.get("data", {})
    parts = [output.get("text", ""), *output.get("traceback", []), *(data.get(f"text/{kind}", "") for kind in _KINDS)]
    return _PICTURE.sub("", "\n".join(part if isinstance(part, str) else "".join(part) for part in parts))


_KINDS = ("plain", "html", "markdown", "latex")


def hidden_errors(notebook) -> list[str]:
    """Errors that ended inside a widget, where whoever runs the notebook does not see them."""
    states = notebook.metadata.get("widgets", {}).values()
    models = [model for group in states for model in group.get("state", {}).values()]
    outputs = [output for model in models for output in model.get("state", {}).get("outputs", [])]
    return [f"{each['ename']}: {each['evalue']}" for each in outputs if each.get("output_type") == "error"]


def normalise(notebook) -> None:
    """Keep what a reader sees and a test compares; drop what changes from run to run."""
    notebook.metadata = type(notebook.metadata)(kernelspec=dict(KERNEL), language_info={"name": "python"})
    for cell in notebook.cells:
        for key in cell.metadata.keys() - {"jupyter", "tags"}:
            del cell.metadata[key]
        if cell.cell_type != "code":
            continue
        if IGNORED in tags(cell):
            cell.outputs = []
        for output in cell.outputs:
            output.get("data", {}).pop(WIDGET_VIEW, None)
            output.get("metadata", {}).pop(WIDGET_VIEW, None)
        cell.outputs = [output for output in cell.outputs if output.get("data") != {}]


def faults(notebook) -> list[str]:
    """Everything that is wrong with a committed notebook, one sentence each; empty when it is in order."""
    rules = (faults_of_state, faults_of_code, faults_of_outputs, faults_of_lesson)
    return [fault for rule in rules for fault in rule(notebook)]


def is_start(notebook) -> bool:
    """Whether it is the page that a reader starts on: short, without the sections of a lesson."""
    return any(re.search(rf"(?im)^# {START}$", cell.source) for cell in notebook.cells if cell.cell_type == "markdown")


def faults_of_state(notebook) -> list[str]:
    """The notebook was run once, from top to bottom, and carries no state of that run."""
    counts = [cell.execution_count for cell in code_cells(notebook)]
    found = []
    if counts != list(range(1, len(counts) + 1)):
        found.append(f"the cells are numbered {counts} and not 1 to {len(counts)}: run `python3 -m woodlib refresh`")
    if "widgets" in notebook.metadata:
        found.append("the notebook carries the state of its widgets: run `python3 -m woodlib refresh`")
    return found


def faults_of_code(notebook) -> list[str]:
    """Cells are short and folded, and none is silenced by a semicolon."""
    found = []
    for number, cell in enumerate(code_cells(notebook), 1):
        lines = cell.source.strip().splitlines()
        if len(lines) > MOST_LINES:
            found.append(f"cell {number} has {len(lines)} lines, more than {MOST_LINES}: move code into the library")
        if not cell.metadata.get("jupyter", {}).get("source_hidden"):
            found.append(f"cell {number} shows its code: fold it (View, Collapse Selected Code)")
        if lines and not lines[0].startswith("# "):
            found.append(
                f"cell {number} begins with code; its first line is seen when it is folded: say there what it is"
            )
        if lines and lines[-1].rstrip().endswith(";"):
            found.append(f"cell {number} ends with a semicolon: bind the result to _ instead")
    return found


def faults_of_outputs(notebook) -> list[str]:
    """Outputs hold numbers to compare, and nothing of the machine that made them."""
    found, numbers = [], 0
    for number, cell in enumerate(code_cells(notebook), 1):
        if IGNORED in tags(cell) and cell.outputs:
            found.append(f"cell {number} is tagged {IGNORED} and yet has outputs")
        for output in cell.outputs:
            text = output_text(output)
            numbers += bool(re.search(r"\d", text))
            found += [f"cell {number} shows {name}" for name, pattern in _MACHINE.items() if pattern.search(text)]
            if WIDGET_VIEW in output.get("data", {}):
                found.append(f"cell {number} keeps a widget that only lived in one run")
            if output.output_type == "error" and "raises-exception" not in tags(cell):
                found.append(f"cell {number} ends in an error: {output.ename}: {output.evalue}")
    if numbers < FEWEST_NUMBERS and not is_start(notebook):
        found.append(f"{numbers} outputs hold a number to compare, fewer than {FEWEST_NUMBERS}")
    return found


def faults_of_lesson(notebook) -> list[str]:
    """The lesson has its fixed sections in their order, and a length that one can read in a sitting."""
    text = "\n".join(cell.source for cell in notebook.cells if cell.cell_type == "markdown")
    headings = [line.lstrip("# ").lower() for line in text.splitlines() if re.match(r"#{1,4} ", line)]
    found, place = [], 0
    for section in () if is_start(notebook) else SECTIONS:
        here = next((at for at in range(place, len(headings)) if section in headings[at]), None)
        if here is None:
            found.append(f"there is no section '{section}' after '{headings[place - 1] if place else 'the start'}'")
        else:
            place = here + 1
    words = len(re.findall(r"[A-Za-z][\w'-]*", text))
    allowed = START_WORDS if is_start(notebook) else WORDS
    if words not in allowed:
        found.append(f"the prose has {words} words and not {allowed.start} to {allowed.stop - 1}")
    return found
