"""Adding up the parts of the tests: nothing left out in silence, nothing failed and still called a success."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from woodlib import testing
from woodlib.errors import InputError
from woodlib.testing import Outcome, count

PYTEST_COUNTS = '<testsuites><testsuite errors="1" failures="2" skipped="3" tests="10"/></testsuites>'


@pytest.fixture
def parts(monkeypatch):
    """Say how each part went, instead of running it."""
    codes = {}

    def pretend(project, name):
        return Outcome(name, 5, codes.get(name, 0), 1.0, codes.get(name, 0))

    monkeypatch.setattr(testing, "run_part", pretend)
    for name in ("CI", "WOODLIB_REQUIRE_BROWSER", "WOODLIB_BROWSER"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(testing, "find_browser", lambda: "/usr/bin/chromium")
    return codes


def test_what_was_not_passed_counts_as_failed(tmp_path):
    (tmp_path / "counts.xml").write_text(PYTEST_COUNTS)
    assert count(tmp_path / "counts.xml") == (4, 6)
    assert count(tmp_path / "none.xml") == (0, 0)


def test_all_parts_passed(parts, capsys):
    assert testing.run_parts(Path("."), []) == 0
    assert capsys.readouterr().out.splitlines()[-1] == "woodlib: 15 passed, 0 failed"


@pytest.mark.parametrize("name", testing.PARTS)
def test_one_failure_fails_the_whole(parts, capsys, name):
    parts[name] = 1
    assert testing.run_parts(Path("."), []) == 1
    assert capsys.readouterr().out.splitlines()[-1] == "woodlib: 15 passed, 1 failed"


def test_a_part_that_stopped_before_its_tests_fails_the_whole(parts, capsys, monkeypatch):
    monkeypatch.setattr(testing, "run_part", lambda project, name: Outcome(name, 0, 0, 1.0, 4))
    assert testing.run_parts(Path("."), ["library"]) == 1
    assert capsys.readouterr().out.splitlines()[-1] == "woodlib: 0 passed, 1 failed"


def test_without_a_browser_its_tests_are_left_out_aloud(parts, capsys, monkeypatch):
    monkeypatch.setattr(testing, "find_browser", lambda: None)
    assert testing.run_parts(Path("."), []) == 0
    said = capsys.readouterr().out
    assert "left out: no Chromium or Chrome was found" in said and "sudo apt install chromium" in said


@pytest.mark.parametrize(("variable", "names"), [("CI", []), ("WOODLIB_REQUIRE_BROWSER", []), ("", ["browser"])])
def test_without_a_browser_nothing_passes_where_one_is_required(parts, capsys, monkeypatch, variable, names):
    monkeypatch.setattr(testing, "find_browser", lambda: None)
    if variable:
        monkeypatch.setenv(variable, "true")
    assert testing.run_parts(Path("."), names) == 1
    assert "cannot run" in capsys.readouterr().out


def test_a_browser_can_be_named(monkeypatch, tmp_path):
    monkeypatch.setenv("WOODLIB_BROWSER", sys.executable)
    assert testing.find_browser() == sys.executable
    monkeypatch.setenv("WOODLIB_BROWSER", str(tmp_path / "none"))
    assert testing.find_browser() is None


def test_a_real_part_is_run_and_counted(tmp_path, monkeypatch, capfd):
    (tmp_path / "pytest.ini").write_text("[pytest]\n")
    (tmp_path / "test_two.py").write_text("def test_a(): pass\ndef test_b(): assert 0\n")
    monkeypatch.setitem(testing.PARTS, "library", ["-p", "no:cacheprovider"])
    outcome = testing.run_part(tmp_path, "library")
    assert (outcome.passed, outcome.failed, outcome.code) == (1, 1, 1)
    assert "1 failed, 1 passed" in capfd.readouterr().out


def test_speed_comparisons_run_by_name_and_an_unknown_one_is_refused(tmp_path, capfd):
    (tmp_path / "bench_a.py").write_text("print('a ran')")
    (tmp_path / "bench_b.py").write_text("raise SystemExit(3)")
    assert testing.run_speed_comparisons(tmp_path, ["a"]) == 0
    assert testing.run_speed_comparisons(tmp_path, []) == 3
    assert capfd.readouterr().out.count("a ran") == 2
    with pytest.raises(InputError, match="no speed comparison 'c'; there are a, b"):
        testing.run_speed_comparisons(tmp_path, ["c"])


def test_two_commits_are_compared_only_where_the_other_is_named(tmp_path, capfd):
    (tmp_path / "bench_a.py").write_text("print('a ran')")
    (tmp_path / "bench_commits.py").write_text("import sys; print('commits', *sys.argv[1:])")
    assert testing.run_speed_comparisons(tmp_path, []) == 0
    assert "commits" not in capfd.readouterr().out
    assert testing.run_speed_comparisons(tmp_path, [], tmp_path, True) == 0
    out = capfd.readouterr().out
    assert f"commits --against {tmp_path} --tests" in out and "a ran" not in out
    with pytest.raises(InputError, match="needs a checkout of another commit"):
        testing.run_speed_comparisons(tmp_path, ["commits"])
    with pytest.raises(InputError, match="--against belongs to the comparison 'commits', and a was asked for"):
        testing.run_speed_comparisons(tmp_path, ["a"], tmp_path)
