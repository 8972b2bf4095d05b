"""What pip says becomes a count and, when it fails, one sentence; a stand-in for pip does the talking."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from woodlib.package_installer import install, sentence_for

FAILURES = [
    ("ERROR: Could not install packages due to an OSError: [Errno 28] No space left on device", "the disk is full"),
    (
        "WARNING: NewConnectionError: Failed to establish a new connection\nERROR: No matching distribution found for x",
        "cannot be reached; connect to the internet",
    ),
    ("Temporary failure in name resolution", "connect to the internet"),
    ("SSLError(SSLCertVerificationError: CERTIFICATE_VERIFY_FAILED", "not trusted here"),
    ("ERROR: [Errno 13] Permission denied: 'lib'", "cannot be written to"),
    ("ERROR: No matching distribution found for scipy==1.17.1", "not offered ready-made for this Python"),
    ("ERROR: something new\n", "something new"),
    ("/shop/.venv/bin/python: No module named pip\n", "No module named pip"),
    ("", "no reason was given"),
]


@pytest.mark.parametrize(("output", "words"), FAILURES)
def test_a_failure_is_one_sentence_that_names_the_log(output, words):
    sentence = sentence_for(output, Path("set-up.log"))
    assert words in sentence
    assert "set-up.log" in sentence and "\n" not in sentence


@pytest.mark.parametrize(("code", "words"), [(0, ""), (1, "the disk is full")])
def test_pip_is_given_the_lock_file_then_the_project_and_what_it_says_is_kept(
    tmp_path, monkeypatch, capfd, code, words
):
    said = "Collecting pint\nProcessing numpy.whl\nInstalling collected packages: pint, numpy\n"
    trouble = "ERROR: No space left on device" if code else ""
    (tmp_path / "pip.py").write_text(f"import sys\nprint({said!r}, sys.argv[1:], {trouble!r})\nsys.exit({code})\n")
    monkeypatch.setenv("PYTHONPATH", str(tmp_path))
    log = tmp_path / "set-up.log"
    sentence = install(Path(sys.executable), tmp_path / "kit.txt", tmp_path / "a project", log)
    assert sentence == "" if not code else words in sentence
    assert "2 packages fetched" in capfd.readouterr().out
    kept = log.read_text()
    assert "'--require-hashes', '-r'" in kept and "kit.txt" in kept
    # Where the packages did not come in, the project is not tried; where they did, it fetches nothing more.
    assert ("'--no-deps', '--no-build-isolation', '-e'" in kept) == (code == 0)
