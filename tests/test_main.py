"""The command line: what it takes, what it refuses, and what an old Python or a bare one gets to see."""

from __future__ import annotations

import ast
import re
import subprocess
import sys
from pathlib import Path

import pytest

from woodlib import __main__, __version__, command_line
from woodlib.commission import chosen_brief, commission_of
from woodlib.environment import SetUpError

PROJECT = Path(__main__.__file__).resolve().parent.parent
COMMANDS = (
    "open",
    "brief",
    "verdicts",
    "handout",
    "setout",
    "what-now",
    "move",
    "test-piece",
    "class",
    "hub",
    "forget",
    "test",
    "refresh",
    "bench",
)


@pytest.fixture(autouse=True)
def here(monkeypatch):
    """Run commands in this Python: setting up has its own tests."""
    monkeypatch.setattr(command_line.environment, "enter", lambda extra, arguments: None)


@pytest.mark.parametrize("name", ["__init__", "__main__"])
def test_what_an_old_python_reads_first_is_spelled_for_it(name):
    text = (PROJECT / "woodlib" / f"{name}.py").read_text()
    ast.parse(text, feature_version=(3, 6))
    assert "from __future__ import annotations" not in text


@pytest.mark.parametrize("newer", [None, "python3.12"])
def test_an_old_python_gets_one_sentence(monkeypatch, capsys, newer):
    monkeypatch.setattr(__main__.sys, "version_info", (3, 9, 2, "final", 0))
    monkeypatch.setattr(__main__, "starts", lambda command: command == newer)
    assert __main__.main(["open"]) == 1
    said = capsys.readouterr().err
    assert "needs Python 3.11 or newer" in said and "is Python 3.9;" in said
    assert (newer or "python.org") in said and said.count("\n") == 1


def test_a_command_that_is_not_there_does_not_start():
    assert __main__.starts(sys.executable)
    assert not __main__.starts("no-such-command-as-this")


def test_a_python_without_any_package_can_read_the_command_line():
    bare = [sys.executable, "-S", "-m", "woodlib"]
    said = subprocess.run([*bare, "--help"], cwd=PROJECT, capture_output=True, text=True, check=True).stdout
    assert all(f"\n    {name}" in said for name in COMMANDS)
    said = subprocess.run([*bare, "--version"], cwd=PROJECT, capture_output=True, text=True, check=True).stdout
    assert said == f"woodlib {__version__}\n"


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ([], "COMMAND"),
        (["opne"], "opne"),
        (["handout"], "BRIEF.toml"),
        (["test", "everything"], "the parts are library, notebooks, browser"),
    ],
)
def test_a_wrong_command_line_is_refused_with_what_is_wrong(arguments, words, capsys):
    with pytest.raises(SystemExit) as caught:
        command_line.run(arguments)
    assert caught.value.code == 2
    assert words in capsys.readouterr().err


def test_options_for_another_program_are_refused_where_there_is_none(capsys):
    assert command_line.run(["brief", "a.toml", "--", "--no-browser"]) == 2
    assert "takes nothing after --, and got: --no-browser" in capsys.readouterr().err


def test_a_new_brief_is_written_once_and_never_over_another(tmp_path, capsys):
    path = tmp_path / "seat.toml"
    assert command_line.run(["brief", str(path)]) == 0
    written = path.read_bytes()
    assert command_line.run(["brief", str(path)]) == 1
    said = capsys.readouterr()
    assert str(path) in said.out
    assert "exists already" in said.err and said.err.count("\n") == 1
    assert path.read_bytes() == written


def test_the_handout_of_a_brief_with_mistakes_is_refused_in_sentences(tmp_path, capsys):
    brief, page = tmp_path / "seat.toml", tmp_path / "seat.html"
    brief.write_text('[piece]\nwidht = "20 in"\n')
    assert command_line.run(["handout", str(brief), "-o", str(page)]) == 1
    said = capsys.readouterr().err
    assert "widht" in said and "Traceback" not in said
    assert not page.exists()


@pytest.mark.parametrize(
    "command",
    [
        ["brief", ""],
        ["brief", "."],
        ["handout", " "],
        ["handout", "."],
        ["setout", ""],
        ["setout", "a.toml", "-o", ""],
        ["handout", "a.toml", "-o", ""],
    ],
)
def test_an_empty_name_is_refused(capsys, command):
    with pytest.raises(SystemExit) as stopped:
        command_line.run(command)
    assert stopped.value.code == 2 and "is not the name of a f" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("brief", "page", "fragment"),
    [
        ("nowhere.toml", "seat.html", "there is no brief at"),
        ("nowhere.toml", "seat.pdf", "give a name that ends in .html"),
        ("nowhere.toml", "no-such-folder/seat.html", "There is no folder"),
    ],
)
def test_nothing_is_announced_before_the_checks_have_passed(tmp_path, capsys, brief, page, fragment):
    assert command_line.run(["handout", str(tmp_path / brief), "-o", str(tmp_path / page)]) == 1
    said = capsys.readouterr()
    assert said.out == "" and fragment in said.err and said.err.count("\n") == 1


def test_a_handout_goes_beside_its_brief_when_no_place_is_named(tmp_path, monkeypatch, capsys):
    asked = []
    monkeypatch.setattr(
        "woodlib.handout.write_handout", lambda brief, output, *_: asked.append((brief, output)) or output
    )
    assert command_line.run(["handout", str(tmp_path / "seat.toml")]) == 0
    assert asked == [(tmp_path / "seat.toml", tmp_path / "seat.html")]
    assert capsys.readouterr().out == f"Wrote {tmp_path / 'seat.html'}\n"


@pytest.mark.parametrize(("reader", "wanted"), [("client", ["page"]), ("shop", ["shop"]), ("both", ["shop", "page"])])
def test_one_command_writes_the_papers_of_the_client_the_shop_or_both(tmp_path, monkeypatch, reader, wanted):
    made = []
    monkeypatch.setattr("woodlib.handout.write_handout", lambda _, output, *more: made.append(("page", output)))
    monkeypatch.setattr(command_line, "write_shop", lambda _, folder, way: made.append(("shop", folder)))
    places = {"page": tmp_path / "seat.html", "shop": tmp_path / "seat-shop"}
    assert command_line.run(["handout", str(tmp_path / "seat.toml"), "--for", reader]) == 0
    assert made == [(name, places[name]) for name in wanted]


def test_nothing_is_written_for_the_shop_where_the_clients_page_may_not_go(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(command_line, "write_shop", lambda *_: pytest.fail("written"))
    (tmp_path / "seat.html").write_text("<p>mine</p>", encoding="utf-8")
    assert command_line.run(["handout", str(tmp_path / "seat.toml"), "--for", "both"]) != 0
    assert "nothing is replaced" in capsys.readouterr().err


def test_what_is_unusual_about_a_brief_is_said_before_the_long_part(tmp_path, capsys):
    from woodlib.brief import read_brief, template_text

    path = tmp_path / "seat.toml"
    path.write_text(template_text().replace('length = "44 in"', 'length = "15 in"'), encoding="utf-8")
    command_line.show_accepted(read_brief(path))
    said = capsys.readouterr()
    assert said.err.startswith("Please check: seat.toml, line ") and "shorter side" in said.err
    assert said.out.startswith("Making the page for ")


SEAT = PROJECT / "data" / "briefs" / "reading_nook_seat.toml"


def test_the_ways_to_build_are_ranked_in_plain_lines(capsys):
    assert command_line.run(["verdicts", str(SEAT)]) == 0
    said = capsys.readouterr()
    ranked = re.findall(r"^(\d+)\. (.+?): (safe|strained|cracking)", said.out, re.MULTILINE)
    commission = commission_of(chosen_brief())
    assert [name for _, name, _ in ranked] == [verdict.way.title for verdict in commission.verdicts]
    assert [risk for *_, risk in ranked] == [verdict.risk for verdict in commission.verdicts]
    lines = " ".join(said.out.split())
    for verdict in commission.verdicts:
        assert verdict.reason in lines
        assert all(verdict.cut(key).text() in lines for key in verdict.way.main_cuts[:1])
    assert (
        "A glued border would need a house that holds the wood within" in lines
        and said.err == ""
        and max(map(len, said.out.split("\n"))) <= 100
    )


def test_verdicts_say_which_way_is_decided_on_and_what_is_unusual(tmp_path, capsys):
    brief = tmp_path / "seat.toml"
    text = SEAT.read_text(encoding="utf-8").replace("coats = 3", "coats = 0")
    brief.write_text(text + '\n[handout.ways-to-build]\nway = "battens"\n', encoding="utf-8")
    assert command_line.run(["verdicts", str(brief)]) == 0
    said = capsys.readouterr()
    assert re.search(r"^\d+\. Battens below, in slots: safe \(decided on\)$", said.out, re.MULTILINE)
    assert said.err.startswith("Please check: seat.toml, line 31: finish.coats is 0")


def test_verdicts_of_a_brief_with_mistakes_are_refused_in_sentences(tmp_path, capsys):
    brief = tmp_path / "seat.toml"
    brief.write_text('[piece]\nwidht = "20 in"\n')
    assert command_line.run(["verdicts", str(brief)]) == 1
    said = capsys.readouterr()
    assert said.out == "" and "widht" in said.err and "Traceback" not in said.err


def test_a_piece_is_set_out_into_a_folder_that_is_made_and_never_written_over(tmp_path, capsys):
    folder = tmp_path / "shop"
    assert command_line.run(["setout", str(SEAT), "-o", str(folder), "--way", "breadboard end"]) == 0
    said = capsys.readouterr()
    assert said.out.startswith("Set out: breadboard end that slides on slots.\nWrote cut-list.csv, ") and said.err == ""
    before = {path.name: path.read_bytes() for path in folder.iterdir()}
    assert {
        "cut-list.csv",
        "hole-list.csv",
        "dowel-list.csv",
        "board-list.csv",
        "order-list.csv",
        "glue-list.csv",
        "finish-list.csv",
        "buy-list.csv",
        "cautions.txt",
        "gap-list.csv",
        "piece.svg",
        "piece.pdf",
        "piece-a4.pdf",
        "joint.svg",
        "stick-1.svg",
        "stick-2.svg",
        "stick-3.svg",
        "blank.svg",
        "shop.html",
    } == set(before)
    assert command_line.run(["setout", str(SEAT), "-o", str(folder)]) == 1
    said = capsys.readouterr()
    assert said.out == "" and said.err.count("already and is left as it is") == len(before)
    assert {path.name: path.read_bytes() for path in folder.iterdir()} == before


def test_what_is_unusual_about_a_brief_is_said_before_it_is_set_out(tmp_path, capsys):
    brief = tmp_path / "seat.toml"
    brief.write_text(SEAT.read_text(encoding="utf-8").replace("coats = 3", "coats = 0"), encoding="utf-8")
    assert command_line.run(["setout", str(brief)]) == 0
    assert "Please check: seat.toml, line 31: finish.coats is 0" in capsys.readouterr().err


def test_boards_that_do_not_reach_are_the_first_line_on_the_terminal(tmp_path, capsys):
    brief = tmp_path / "seat.toml"
    brief.write_text(SEAT.read_text(encoding="utf-8").replace("count = 3\n", "", 1), encoding="utf-8")
    assert command_line.run(["setout", str(brief), "--way", "battens"]) == 0
    assert capsys.readouterr().out.startswith("The boards on hand do not make this panel: ")


def test_a_piece_is_set_out_beside_its_brief_when_no_folder_is_named_and_warns_before_it_writes(tmp_path, capsys):
    brief = tmp_path / "seat.toml"
    brief.write_text(
        SEAT.read_text(encoding="utf-8").replace('inset = "3/4 in"', 'inset = "1-1/2 in"'), encoding="utf-8"
    )
    kept = brief.read_bytes()
    assert command_line.run(["setout", str(brief)]) == 0
    said = capsys.readouterr()
    assert said.err.count("Please check: ") == 2 and "an inset of up to" in said.err
    assert (tmp_path / "seat-shop" / "piece.svg").exists() and brief.read_bytes() == kept


def test_what_is_refused_on_the_way_comes_out_as_a_sentence(monkeypatch, capsys):
    def refuse(extra, arguments):
        raise SetUpError("The shop is closed.")

    monkeypatch.setattr(command_line.environment, "enter", refuse)
    assert command_line.run(["open"]) == 1
    assert capsys.readouterr().err == "The shop is closed.\n"


def test_stopping_by_hand_is_no_traceback(monkeypatch, capsys):
    def stop(extra, arguments):
        raise KeyboardInterrupt

    monkeypatch.setattr(command_line.environment, "enter", stop)
    assert command_line.run(["test"]) == 130
    assert "Run the same command again" in capsys.readouterr().err


@pytest.mark.parametrize("name", ["test", "refresh", "bench"])
def test_commands_of_the_working_copy_say_so_elsewhere(monkeypatch, capsys, name):
    monkeypatch.setattr(command_line.environment, "project_folder", lambda: None)
    assert command_line.run([name]) == 1
    assert "needs a working copy" in capsys.readouterr().err


def test_progress_is_counted_on_one_line_of_a_screen(monkeypatch, capsys):
    command_line.show_progress(1, 2)
    assert capsys.readouterr().out == ""
    monkeypatch.setattr(command_line.sys.stdout, "isatty", lambda: True, raising=False)
    command_line.show_progress(2, 2)
    assert capsys.readouterr().out == "\r  100 % done\n"


def test_kept_tables_are_taken_away(monkeypatch, tmp_path, capsys):
    monkeypatch.setattr("woodlib.handout.cache.user_cache_path", lambda name: tmp_path / name)
    (tmp_path / "woodlib" / "tables").mkdir(parents=True)
    (tmp_path / "woodlib" / "tables" / "0a1b").write_bytes(b"kept")
    assert command_line.run(["forget"]) == 0
    assert "Took 1 tables away" in capsys.readouterr().out
    assert not list((tmp_path / "woodlib" / "tables").iterdir())


def test_a_reader_that_has_read_enough_ends_the_command_quietly():
    told = subprocess.run(
        f'"{sys.executable}" -m woodlib verdicts "{SEAT}" | head -n 1',
        shell=True,
        capture_output=True,
        text=True,
        cwd=PROJECT,
    )
    assert told.stdout.startswith("Lift-up seat") and "Traceback" not in told.stderr
