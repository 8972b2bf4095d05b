"""A worksheet for each student and the key to all of them, on paper and as a page that judges."""

from __future__ import annotations

from collections.abc import Sequence

from ..handout.page import page, question_html
from ..lesson.cards import exercise_record
from ..lesson.exercise import Exercise
from ..lesson.rules import exercise_rules
from ..picture.paper import Paper
from ..picture.pdf import can_print, sheets_pdf
from ..templates import template
from .names import NO_NAME
from .problems import PROBLEMS, exercises_of, tables

PRACTICE = "Work them with the tables. Write every answer with its unit, as you would in the shop."
TO_WORK = 60.0  # px of white paper below a problem
CAUTION = "Averages of clear wood; a single board can be well off. Numbers, clients and houses are invented."


def worksheets_pdf(names: Sequence[str], seed: str) -> bytes:
    """A worksheet with own numbers for every student, each beginning on a page of its own."""
    sheet = Paper("Worksheets", foot=f"woodlib \u00b7 numbers of the seed \u201c{seed}\u201d \u00b7 {CAUTION}")
    for student, name in enumerate(names):
        if student:
            sheet.new_page()
        sheet.text(f"{on_paper(name, student + 1)}: wood that moves", 18.0, bold=True)
        sheet.text(f"Worksheet {student + 1}. {PRACTICE}", after=6.0)
        for number, (problem, exercise) in enumerate(zip(PROBLEMS, exercises_of(seed, student), strict=True), start=1):
            sheet.room(90.0 + TO_WORK)
            sheet.text(f"{number}. {problem.about}", bold=True, after=0.0)
            sheet.text(exercise.question.words, indent=16.0, after=0.0)
            sheet.y += TO_WORK
            sheet.to_fill("Answer")
        for caption, rows in tables():
            sheet.room(80.0)
            sheet.text(caption, 11.0, bold=True, after=1.0)
            sheet.table(rows, _shares(rows[0]), 9.6)
    return sheets_pdf(sheet.finish())


def key_pdf(names: Sequence[str], seed: str) -> bytes:
    """The answers to every worksheet, from where to where an answer is right, and the way to each."""
    sheet = Paper(
        "Key to the worksheets", foot=f"woodlib \u00b7 key to the seed \u201c{seed}\u201d \u00b7 for the teacher"
    )
    sheet.text("Key to the worksheets", 18.0, bold=True)
    sheet.text("Right is what lies in the third column; a gap or slot may be more than needed, never less.", after=6.0)
    for student, name in enumerate(names):
        sheet.room(330.0)
        sheet.heading(f"{student + 1}. {on_paper(name, student + 1)}")
        rows = [["", "Answer", "Right from ... to", "One way"]]
        for number, (problem, exercise) in enumerate(zip(PROBLEMS, exercises_of(seed, student), strict=True), start=1):
            answer = exercise.question.text(exercise.answer, exercise.safe)
            rows.append([f"{number}. {problem.about}", answer, right_span(exercise), exercise.way])
        sheet.table(rows, (0.16, 0.2, 0.28, 0.36), 10.0)
    return sheets_pdf(sheet.finish())


def on_paper(name: str, number: int) -> str:
    """The name as it is printed; a student whose name no typeface here has writes it in by hand."""
    return name if can_print(name) else NO_NAME.format(number=number)


def right_span(exercise: Exercise) -> str:
    """From where to where an answer is right, as text.

    >>> from woodlib.lesson.question import Question
    >>> right_span(Exercise(Question("half", "Half an inch?", "length"), lambda: 0.0127, 0.0016))
    '7/16 in (11 mm) to 9/16 in (14.5 mm)'
    """
    number = next(k for k, band in enumerate(exercise.bands) if band.right)
    edges = exercise.bands[number - 1].up_to, exercise.bands[number].up_to
    return " to ".join(exercise.question.text(edge) for edge in edges)


def practice_page(name: str, number: int, seed: str) -> str:
    """A student's own problems as a page that judges what is typed; the answers are in its file for those who look."""
    problems = list(zip(PROBLEMS, exercises_of(seed, number - 1), strict=True))
    cards = [question_html(exercise_record(exercise) | {"rules": exercise_rules(exercise)}) for _, exercise in problems]
    body = template("classroom/templates/practice.html").render(
        name=name,
        number=number,
        how=PRACTICE,
        problems=list(zip((problem.about for problem, _ in problems), cards, strict=True)),
        # Stood upright, so that they fit a phone.
        tables=[(caption, list(zip(*rows, strict=True))) for caption, rows in tables()],
        caution=CAUTION,
    )
    return page(f"{name}: own numbers", [body], slides=False, scripts=("judge.js",))


def _shares(head: Sequence[str]) -> list[float]:
    first = min(0.3, 0.012 * max(8, len(head[0])))
    return [first, *[(1.0 - first) / (len(head) - 1)] * (len(head) - 1)]
