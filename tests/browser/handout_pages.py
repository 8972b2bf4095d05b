"""Handouts to try in a browser, and what the library itself would show in the place of what a page shows.

The expected side is the library's own drawing and its own readings, written out and read again; it takes nothing from
the tables of a page.
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

from example_study import example, example_answer

from woodlib.classroom.folder import class_files
from woodlib.commission.shop_files import write_shop_files
from woodlib.data_files import data_path
from woodlib.handout import write_handout
from woodlib.handout.client_page import shop_page
from woodlib.handout.page import page, question_html
from woodlib.handout.sections import section
from woodlib.picture.svg import svg_body
from woodlib.studies import find_study
from woodlib.study import Answer, Choice, Span, Study, Switch, study
from woodlib.study.readings import readings_html

HOSTILE = '"><script>document.title="taken"</script><img src=x onerror="document.title=1"> \'</desc></svg>\\'
UNITS = ("both", "inch", "metric")
LINE_PX = 0.5

# What a page shows of a study: per mark its class and geometry, per place of words its class and text.
READ = """name => {
  const section = document.getElementById(name), all = (what) => [...section.querySelectorAll(what)];
  const kept = ["d", "cx", "cy", "r", "x", "y"];
  return {
    marks: all("[data-marks] :is(path,circle,text)").map((mark) => [mark.localName, mark.getAttribute("class") || "",
      kept.map((key) => mark.getAttribute(key) || "").join(" "), mark.textContent]),
    said: all("[data-s]").map((place) => [place.getAttribute("class") || "", place.textContent]),
    values: all("[data-value]").map((value) => value.textContent),
    spoken: all("[data-input]").map((control) => control.getAttribute("aria-valuetext")),
    words: section.querySelector("desc").textContent,
  };
}"""
# Put controls where they are wanted, by their own input events, and read the page in each of the three ways to write numbers.
MOVE_AND_READ = f"""([name, places]) => {{
  const section = document.getElementById(name), read = {READ};
  section.querySelectorAll("[data-input]").forEach((control, k) => {{
    if (control.type === "checkbox") control.checked = places[k];
    else if (control.type === "range") control.value = places[k];
    else control.selectedIndex = places[k];
    control.dispatchEvent(new Event("input", {{ bubbles: true }}));
  }});
  return ["both", "inch", "metric"].map((way) => {{
    const choice = document.querySelector(`[name=units][value=${{way}}]`);
    choice.checked = true;
    choice.dispatchEvent(new Event("change", {{ bubbles: true }}));
    return read(name);
  }});
}}"""


@study("plain-words", HOSTILE, [Switch("held", HOSTILE), Choice("kind", HOSTILE, {"a": HOSTILE, "b": "b"}, "a")])
def plain_words(held: bool, kind: str) -> Answer:
    """A study by somebody who would like to take the page over."""
    answer = example_answer("cherry", 0.5, 30.0, held)
    return Answer(answer.picture, HOSTILE + kind, answer.readings, HOSTILE, (HOSTILE,))


CARDS = (
    {
        "role": "prediction",
        "key": HOSTILE,
        "question": f"Wider or narrower? {HOSTILE}",
        "options": ["wider", HOSTILE],
        "how": "",
    },
    {"role": "seen", "key": HOSTILE, "answer": "wider", "words": HOSTILE},
    {"role": "prediction", "key": "size", "question": "How far?", "options": [], "how": "a length, like 3/16 in"},
    {"role": "seen", "key": "size", "answer": "3/16 in", "words": "In this house."},
    {"role": "exercise", "key": "x", "question": "And in a flat?", "answer": "1/8 in", "why": "", "way": HOSTILE},
)
STUDIES: dict[str, Study] = {
    "example": example.starting(width="18-1/8 in"),
    "moisture-by-month": find_study("moisture-by-month"),
    "plain-words": plain_words,
}


@cache
def handout() -> str:
    """A page with a study that holds everything a study may hold, one of the kit's own, a hostile one, and cards."""
    studies = [section(each).html(name) for name, each in STUDIES.items()]
    cards = "".join(f"<div>{question_html(record)}</div>" for record in CARDS)
    text = "<h1>A lift-up seat</h1><p>For a reading nook (an invented piece).</p><h2>How far it moves</h2>"
    return page("A lift-up seat", [text, studies[0], cards, "<h2>More</h2>", *studies[1:]])


def write_handout_page(folder: Path) -> str:
    """Write the handout to a folder; returns its ``file:`` address."""
    target = folder / "handout.html"
    target.write_text(handout(), encoding="utf-8")
    return target.as_uri()


def slider_places(entry: Span) -> list[float]:
    """Where a slider of a page can stand: its steps and, if it lies between two of them, the start."""
    steps = [entry.at(position) for position in range(entry.positions)]
    own = [] if any(abs(entry.start - step) < 1e-9 for step in steps) else [entry.start]
    return sorted(steps + own)


def random_places(chosen: Study, noise) -> tuple[list[int], dict[str, Any]]:
    """Places of the controls at random, and the state of the study that they stand for."""
    places, state = [], {}
    for entry in chosen.inputs:
        options = (
            slider_places(entry)
            if isinstance(entry, Span)
            else list(entry.labels)
            if isinstance(entry, Choice)
            else [False, True]
        )
        places.append(int(noise.integers(len(options))))
        state[entry.key] = options[places[-1]]
    return places, state


def expected(chosen: Study, state: dict[str, Any], units: str) -> dict[str, Any]:
    """What the library shows at a state, in the shape of what is read from a page."""
    answer = chosen.function(**state)
    drawing = ElementTree.fromstring(f"<g>{svg_body(answer.picture, units)}</g>")
    kept = ("d", "cx", "cy", "r", "x", "y")
    marks = [
        [mark.tag, mark.get("class", ""), " ".join(mark.get(key, "") for key in kept), "".join(mark.itertext())]
        for mark in drawing.iter()
        if mark.tag in ("path", "circle", "text")
    ]
    words = ElementTree.fromstring(readings_html(answer, units).replace(" data-s", ' data-s=""'))
    said = [
        [place.get("class", ""), "".join(place.itertext())] for place in words.iter() if place.get("data-s") is not None
    ]
    values = [entry.text(state[entry.key], units) for entry in chosen.inputs]
    spoken = [value if isinstance(entry, Span) else None for entry, value in zip(chosen.inputs, values, strict=True)]
    return {"marks": marks, "said": said, "values": values, "spoken": spoken, "words": answer.alt_text(units)}


def differences(shown: dict[str, Any], wanted: dict[str, Any]) -> list[str]:
    """Every way in which a page differs from the library; empty when it shows the same."""
    found = [
        f"{key}: {got!r} is not {want!r}"
        for key in ("said", "values", "spoken", "words")
        for got, want in zip_all(shown[key], wanted[key])
        if got != want
    ]
    for got, want in zip_all(shown["marks"], wanted["marks"]):
        if got is None or want is None or (got[0], got[1].strip(), got[3]) != (want[0], want[1].strip(), want[3]):
            found.append(f"mark: {got!r} is not {want!r}")
        elif not max(away(got[2], want[2]), default=0.0) <= LINE_PX:
            found.append(f"line off by {max(away(got[2], want[2])):.2f} px: {got[2][:80]!r}, not {want[2][:80]!r}")
    return found


def zip_all(shown: Any, wanted: Any) -> list[tuple[Any, Any]]:
    """Pairs of what is shown and what is wanted; a missing partner is None. Two strings are one pair."""
    if isinstance(wanted, str):
        return [(shown, wanted)]
    longest = max(len(shown), len(wanted))
    return list(
        zip([*shown, *[None] * (longest - len(shown))], [*wanted, *[None] * (longest - len(wanted))], strict=True)
    )


def away(shown: str, wanted: str) -> list[float]:
    """Distances between the numbers of two geometries; infinite when they are not of the same make."""
    first, second = (re.findall(r"-?\d+\.?\d*", text) for text in (shown, wanted))
    if len(first) != len(second) or shown.count("Z") != wanted.count("Z"):
        return [float("inf")]
    return [abs(float(a) - float(b)) for a, b in zip(first, second, strict=True)]


TYPED = """=1+1</title></script><img src=x onerror="document.title='taken'"><script>document.title='taken'</script>{{7*7}} \U0001fa91 ספסל"""
NAMED = "=1+1</td></script><img src=x onerror=document.title=1>"
# What a page or a drawing must not hold when somebody has typed such words into a brief, a table of woods or a list of names.
TAKEN = """() => ({
  title: document.title === "taken" || document.title === "1",
  made: document.querySelectorAll("img[src=x], [onerror], iframe, foreignObject, a[href^=javascript]").length,
  ran: [...document.scripts].filter((one) => one.textContent.startsWith("document.title")).length,
})"""
UNTAKEN = {"title": False, "made": 0, "ran": 0}


def write_hostile_pages(folder: Path) -> list[Path]:
    """Every page and drawing that a brief with hostile words in each of its texts leads to, and a class with such names."""
    brief = data_path("briefs/reading_nook_seat.toml").read_text("utf-8")
    for key in ("title", "maker", "client"):
        brief = re.sub(rf'^{key} = ".*"$', lambda _, key=key: f"{key} = '''{TYPED}'''", brief, flags=re.M)
    brief = re.sub(r'notes = """.*?"""', lambda _: f"notes = '''{TYPED}'''", brief, flags=re.S)
    for old in ('"left finger pull"', '"A"'):
        brief = brief.replace(f"name = {old}", f"name = '{NAMED}'")
    brief = brief.replace('"white oak"', f"'{NAMED}'\nown_species = 'own.csv'")
    wood = f'"{NAMED}",9.1,4.6,0.69,11'
    columns = "name,tangential_shrinkage_percent,radial_shrinkage_percent,specific_gravity_12,modulus_of_elasticity_gpa"
    (folder / "own.csv").write_text(f"{columns}\n{wood}\n", encoding="utf-8")
    place = folder / "hos'tile & co.toml"
    place.write_text(brief, encoding="utf-8")
    pages = [write_handout(place, folder / "client.html")]
    pages += write_shop_files(place, folder / "shop", pages={"shop.html": shop_page})
    for name, content in class_files([], [TYPED], NAMED, lambda _: None).items():
        target = folder / "class" / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(content)
        pages.append(target)
    return [page for page in pages if page.suffix in (".html", ".svg")]
