"""The pages of a class in Chromium, from disk and without a network: on a phone, by keyboard, for everybody."""

from __future__ import annotations

import shutil

import pytest
from axe_playwright_python.sync_playwright import Axe

from woodlib.classroom.folder import TEACHER, write_class
from woodlib.classroom.problems import exercises_of
from woodlib.opening import notebooks_folder

PHONE = {"viewport": {"width": 360, "height": 740}, "has_touch": True, "is_mobile": True}


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """A class with three of the lessons: all of them are made the same way."""
    school = tmp_path_factory.mktemp("school")
    (school / "notebooks").mkdir()
    for notebook in sorted(notebooks_folder().glob("*.ipynb"))[:3]:
        shutil.copy(notebook, school / "notebooks")
    write_class(school / "class", school / "notebooks", ("Ada", "Bo"), "spring")
    return school / "class"


def test_every_page_fits_a_phone_asks_for_nothing_and_has_no_fault(offline, made):
    watched = offline(**PHONE)
    for path in sorted(made.rglob("*.html")):
        watched.page.goto(path.as_uri())
        assert watched.page.evaluate("document.documentElement.scrollWidth") <= PHONE["viewport"]["width"], path.name
        found = Axe().run(watched.page)
        assert found.violations_count == 0, f"{path.name}: {found.generate_report()}"
    assert watched.errors == [] and watched.requests == []


def test_a_student_walks_from_the_index_to_an_answer_and_back(offline_page, made):
    page = offline_page.page
    page.goto((made / "index.html").as_uri())
    page.get_by_role("link", name="Bo", exact=True).click()
    exercise = exercises_of("spring", 1)[0]
    card = page.locator(f'[data-exercise="{exercise.question.key}"]')
    card.get_by_role("textbox").fill("99 %")
    card.get_by_role("textbox").press("Enter")
    assert card.get_by_role("status").inner_text() == exercise.judge("99 %").sentence
    card.get_by_role("textbox").fill(exercise.question.text(exercise.answer))
    card.get_by_role("button", name="Check my answer").click()
    assert card.get_by_role("status").inner_text().startswith("Right: ")
    page.get_by_role("link", name="All of the class").click()
    assert page.title() == "Wood that moves"
    assert offline_page.errors == [] and offline_page.requests == []


def test_lessons_follow_each_other_and_judge(offline_page, made):
    page = offline_page.page
    lessons = sorted((made / "lessons").glob("*.html"))
    page.goto(lessons[0].as_uri())
    judged = 0
    for lesson in lessons[1:]:
        cards = page.locator("[data-exercise]:visible")
        for number in range(cards.count()):
            cards.nth(number).get_by_role("button", name="Check my answer").click()
            assert cards.nth(number).get_by_role("status").inner_text().startswith("There is no answer yet.")
            judged += 1
        page.get_by_role("navigation").first.get_by_role("link").last.click()
        assert page.url == lesson.as_uri()
    assert judged > len(lessons)
    assert offline_page.errors == [] and offline_page.requests == []


def test_the_teacher_comes_from_a_sheet_to_its_lesson(offline_page, made):
    page = offline_page.page
    page.goto((made / TEACHER / "index.html").as_uri())
    page.locator("ol a").first.click()
    assert page.get_by_role("heading", level=1).inner_text().startswith("For the teacher")
    page.locator("a[href^='../lessons/']").click()
    assert page.locator("main nav").count() == 2


ON_SLIDE = """[...document.querySelectorAll("main .text_cell_render > *, main .code_cell")]
  .filter((one) => !one.classList.contains("off-slide") && one.checkVisibility()).map((one) => one.textContent.trim())"""


def test_a_lesson_as_slides_shows_all_of_it_once_and_in_order(offline_page, made):
    page = offline_page.page
    for lesson in sorted((made / "lessons").glob("*.html"))[:2]:
        page.goto(lesson.as_uri())
        whole = [text for text in page.evaluate(ON_SLIDE) if text]
        page.get_by_role("button", name="Show as slides").click()
        count = int(page.locator(".slide-bar [role=status]").inner_text().split(" of ")[1].split(":")[0])
        shown = []
        for number in range(1, count + 1):
            assert page.locator(".slide-bar [role=status]").inner_text().startswith(f"{number} of {count}: ")
            slide = [text for text in page.evaluate(ON_SLIDE) if text]
            assert slide, (lesson.name, number)
            shown += slide
            page.keyboard.press("ArrowRight")
        assert shown == whole and count > 8
        page.keyboard.press("Escape")
        assert [text for text in page.evaluate(ON_SLIDE) if text] == whole
    assert offline_page.errors == [] and offline_page.requests == []


def test_arrow_keys_move_the_slider_that_has_them_and_a_slide_keeps_its_place(offline_page, made):
    page = offline_page.page
    lesson = next(path for path in sorted((made / "lessons").glob("*.html")) if "data-table" in path.read_text())
    page.goto(f"{lesson.as_uri()}#slides")
    page.wait_for_selector("html[data-ready]")
    while not page.locator(".study input[type=range]").first.is_visible():
        page.keyboard.press("PageDown")
    status, slider = page.locator(".slide-bar [role=status]"), page.locator(".study input[type=range]").first
    place, before = status.inner_text(), slider.input_value()
    slider.focus()
    page.keyboard.press("ArrowRight")
    assert slider.input_value() != before and status.inner_text() == place
    moved = slider.input_value()
    page.get_by_role("button", name="Next").click()
    page.get_by_role("button", name="Back", exact=False).first.click()
    assert slider.input_value() == moved and slider.is_visible()
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()


def test_type_fits_again_when_a_covered_study_opens_on_its_slide(offline_page, made):
    page, size = offline_page.page, "parseFloat(document.documentElement.style.fontSize)"
    lesson = next(path for path in sorted((made / "lessons").glob("*.html")) if "Open without" in path.read_text())
    page.goto(f"{lesson.as_uri()}#slides")
    page.wait_for_selector("html[data-ready]")
    opens = page.locator("main button:visible", has_text="Open without")
    while opens.count() == 0:
        page.keyboard.press("PageDown")
    before = page.evaluate(size)
    opens.click()
    page.wait_for_timeout(400)
    assert page.evaluate(size) < before
