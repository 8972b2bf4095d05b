"""The page as a file: its policy names its own script and nothing else, and nobody's words become markup."""

from __future__ import annotations

import base64
import gzip
import hashlib
import json
import re

from example_study import example, example_answer

from woodlib.handout import cache
from woodlib.handout.frozen import STILL
from woodlib.handout.page import page, part, study_section
from woodlib.handout.sections import section
from woodlib.picture.scene import Picture, Words
from woodlib.study import Answer, Span, Switch, study


def test_the_policy_allows_the_script_in_the_file_and_no_other():
    text = page("T", ["<p>b</p>"])
    script = re.findall(r"<script>(.*?)</script>", text, re.S)
    assert len(script) == 1
    digest = base64.b64encode(hashlib.sha256(script[0].encode()).digest()).decode()
    assert f"script-src 'sha256-{digest}'" in text and "default-src 'none'" in text and "unsafe-eval" not in text


def test_the_page_names_no_address():
    text = page("T", [section(example).html("example")])
    assert not [
        address for address in re.findall(r"https?://[^\s\"'<)]+", text) if address != "http://www.w3.org/2000/svg"
    ]


def test_the_start_state_is_written_in_full_without_the_script():
    html = section(example.starting(width="30 in")).html("example")
    assert (
        "30 in (762 mm)" in html
        and "A panel 30 in (762 mm) wide" in html
        and "<svg" in html
        and "Made-up coefficients" in html
    )


def test_hostile_words_stay_words():
    bad = '"><script>alert(1)</script><img src=x onerror=alert(2)>'
    hostile = study("trial", bad, (Switch("held", bad),))(lambda held: example_answer("cherry", 0.5, 30, held))
    html = study_section(hostile, "", "trial") + page(bad, [])
    assert "<script>alert" not in html and "<img" not in html


def test_the_table_unpacks_to_what_was_frozen():
    html = section(example).html("my-name")
    packed = re.search(r"data-table>([^<]+)<", html).group(1)
    payload = json.loads(gzip.decompress(base64.b64decode(packed)))
    assert [entry["key"] for entry in payload["inputs"]] == ["wood", "width", "dry", "held"]
    assert 'id="my-name"' in html


def test_the_script_knows_nothing_about_wood_and_stays_short():
    script = part("page.js")
    assert len(script.splitlines()) <= 170
    for word in ("wood", "moist", "grain", "species", "panel", "glue", "strain"):
        assert word not in script.lower()


def test_an_unchanged_study_is_taken_from_what_was_kept(monkeypatch, tmp_path):
    monkeypatch.setattr(cache, "_folder", lambda: tmp_path)
    first = section(example)
    monkeypatch.setattr("woodlib.handout.replay.freeze_checked", None)
    assert section(example) == first
    (tmp_path / cache.study_name(example)).write_bytes(b"damaged")
    assert cache.kept(cache.study_name(example)) is None


def test_another_start_or_question_is_another_table():
    names = {cache.study_name(example), cache.study_name(example.starting(width="21 in"))}
    assert None not in names and len(names) == 2


def test_a_study_that_cannot_be_frozen_stands_still_and_says_so():
    def branching(width):
        return Answer(Picture("t", 10, 10, (Words(1, 1, "wide" if width > 0.6 else "narrow"),)), "x", ())

    span = Span("width", "Width", "length", 0.1, 1.2, 0.05, 0.5)
    found = section(study("trial", "How wide?", (span,))(branching))
    html = found.html("trial")
    assert STILL in html and "<input" not in html and "data-table" not in html and "data-study" not in html
    assert "Width: 19-11/16 in (500 mm)" in html and ">narrow<" in html
    assert found.report.startswith("trial stands still on the page. ") and "pick(...)" in found.report
