"""Own numbers: right as the library answers, workable with the tables of the sheet, and nobody's are their neighbour's."""

from __future__ import annotations

import re

import pytest

from woodlib.classroom.own_numbers import own
from woodlib.classroom.problems import COLD_C, HUMIDITIES, PROBLEMS, exercises_of, tables
from woodlib.classroom.worksheets import right_span

EVERY = [(problem, choice) for problem in PROBLEMS for choice in problem.choices]


def columns(number: int) -> list[list[str]]:
    return [list(column[1:]) for column in tables()[number][1]]


@pytest.mark.parametrize("problem", PROBLEMS, ids=lambda problem: problem.key)
def test_every_choice_is_right_as_it_is_written_and_no_miss_is(problem):
    for choice in problem.choices:
        exercise = problem.make(*choice)
        written = exercise.question.text(exercise.answer, exercise.safe)
        first, *second = written.removesuffix(")").split(" (")
        for said in (exercise.answer, first, *second):
            assert exercise.judge(said).right, (choice, said)
        for miss in exercise.known_misses:
            judged = exercise.judge(miss)
            assert judged.right is False and judged.sentence.startswith("Not yet. "), (choice, miss)
        assert "{" not in exercise.question.words + exercise.way and exercise.why


def test_the_first_two_tables_are_enough_for_their_problems():
    moistures = dict(zip(HUMIDITIES, map(float, columns(0)[1]), strict=True))
    holds = dict(zip(COLD_C, map(float, columns(1)[2]), strict=True))
    for problem, choice in EVERY:
        if problem.key == "resting-moisture":
            low = choice[0] // 5 * 5
            read = moistures[low] + (moistures[low + 5] - moistures[low]) * (choice[0] - low) / 5
            assert problem.make(*choice).judge(f"{read:.1f} %").right, choice
        if problem.key == "winter-air":
            share = choice[1] * holds[choice[0]] / holds[COLD_C[-1]]
            assert problem.make(*choice).judge(f"{share:.0f} %").right, choice


def test_the_third_table_is_enough_for_movement_and_held_wood():
    head, flat, quartered = (row for row in tables()[2][1])
    share = {(wood, row[0]): float(row[k]) for row in (flat, quartered) for k, wood in enumerate(head) if k}
    for problem, choice in EVERY:
        if problem.key == "movement":
            wood, cut, width_in, (begin, end) = choice
            by_hand = width_in * 25.4 * share[wood, cut] * abs(end - begin)
            assert problem.make(*choice).judge(f"{by_hand:.1f} mm").right, choice
        if problem.key == "held-share":
            wood, _, points = choice
            assert problem.make(*choice).judge(f"{100 * share[wood, 'flatsawn'] * points:.2f} %").right, choice


def test_what_is_printed_is_enough_for_gap_slot_days_and_holes():
    inches = r"([\d/-]+) in"

    def number(text):
        whole, _, part = text.rpartition("-")
        top, _, low = part.partition("/")
        return float(whole or 0) + (float(top) / float(low) if low else float(top))

    for problem, choice in EVERY:
        exercise, words = problem.make(*choice), problem.make(*choice).question.words
        found = [number(size) for size in re.findall(inches, words)]
        if problem.key == "gap-to-cut":
            assert exercise.judge(f"{found[-1]} in").right, words
        if problem.key == "slot-to-cut":
            assert exercise.judge(f"{sum(found)} in").right, words
        if problem.key == "thicker-stock":
            days = int(re.search(r"(\d+) days", words)[1])
            assert exercise.judge(f"{days * (found[1] / found[0]) ** 2:.0f} days").right, words
        if problem.key == "last-dowel":
            cut, dowel, margin = found
            assert exercise.judge(f"{cut - margin - dowel / 2} in").right, words
        if problem.key == "first-hole":
            wide = float(re.search(r"\(([\d.]+) mm\)", words)[1])
            assert exercise.judge(f"{(wide - choice[1]) / 2:.2f} mm").right, words


def test_everybody_s_numbers_are_their_own_and_come_from_the_seed():
    first = [[exercise.question.words for exercise in exercises_of("spring", student)] for student in range(20)]
    again = [[exercise.question.words for exercise in exercises_of("spring", student)] for student in range(20)]
    other = [exercise.question.words for exercise in exercises_of("autumn", 0)]
    assert first == again and other != first[0]
    for questions in zip(*first, strict=True):
        assert len(set(questions)) == 20
    assert [own("a", "b", student, "xyz") for student in range(3)] != sorted("xyz") or own("c", "b", 0, "xyz")


def test_the_span_of_the_key_is_where_the_page_says_right():
    for student in range(5):
        for exercise in exercises_of("spring", student):
            low, high = right_span(exercise).split(" to ")
            assert low != high and exercise.judge(exercise.answer).right
