"""Read the command line, see to the environment, run the command; standard library only until a command runs."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Callable
from functools import partial
from pathlib import Path

from . import __version__, environment
from .errors import WoodlibError
from .testing import FURTHER, PARTS, run_parts, run_script, run_speed_comparisons

ABOUT = "How far a solid-wood panel moves in a given house, what happens when it is held, and how to build it."


def run(arguments: list[str]) -> int:
    """Run one command and return its exit code; what woodlib refuses comes out as a sentence, not a traceback."""
    before, after = split_at_dashes(arguments)
    chosen = parser().parse_args(before)
    chosen.passed_on = after
    if after and not chosen.takes_more:
        print(f"The command {chosen.name} takes nothing after --, and got: {' '.join(after)}", file=sys.stderr)
        return 2
    try:
        environment.enter(chosen.extra, arguments)
        code = chosen.action(chosen)
        sys.stdout.flush()
        return code
    except WoodlibError as error:
        print(error, file=sys.stderr)
        return 1
    except BrokenPipeError:  # whoever read on, such as head, has read enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        print("\nStopped. Run the same command again to go on.", file=sys.stderr)
        return 130


def split_at_dashes(arguments: list[str]) -> tuple[list[str], list[str]]:
    """What is for woodlib, and what comes after ``--`` and is for the program that woodlib starts.

    >>> split_at_dashes(["open", "--", "--no-browser"])
    (['open'], ['--no-browser'])
    """
    place = arguments.index("--") if "--" in arguments else len(arguments)
    return arguments[:place], arguments[place + 1 :]


def parser() -> argparse.ArgumentParser:
    """The commands and their options."""
    top = argparse.ArgumentParser(prog="python3 -m woodlib", description=ABOUT)
    top.add_argument("--version", action="version", version=f"woodlib {__version__}")
    commands = top.add_subparsers(dest="name", metavar="COMMAND", required=True)

    def command(name: str, action: Callable, text: str, extra: str = "", takes_more: bool = False):
        made = commands.add_parser(name, help=text, description=text)
        made.set_defaults(action=action, extra=extra, takes_more=takes_more)
        return made

    made = command("open", open_notebooks, "open the notebooks in JupyterLab, at the start page", takes_more=True)
    made.add_argument(
        "folder",
        nargs="?",
        type=Path,
        help="copy the notebooks there first and open the copies; files "
        "that are there already are left as they are. Options for JupyterLab go after --",
    )
    made = command("brief", write_brief, "ask six questions and write a brief, or write one with every key explained")
    made.add_argument("file", nargs="?", type=file_path, metavar="NEW.toml", help="left out, six questions are asked")
    made.add_argument("--kind", default="", metavar="KIND", help='only what this kind of piece needs: "table top"')
    made = command("handout", write_handout, "make the handout for a brief: one HTML file that needs no network")
    made.add_argument("brief", type=file_path, metavar="BRIEF.toml")
    made.add_argument(
        "-o",
        "--output",
        type=file_path,
        metavar="FILE.html",
        help="where to write it; left out, beside the brief under its name: seat.html for seat.toml. The shop's papers go into "
        "a folder beside it, seat-shop",
    )
    made.add_argument(
        "--for",
        dest="reader",
        choices=("client", "shop", "both"),
        default="client",
        help="client, left out: the page; shop: the folder of the shop's papers, as setout writes it; both: each under its name",
    )
    made = command("verdicts", show_verdicts, "rank the ways to build the piece of a brief, with gap, risk and reason")
    made.add_argument("brief", type=file_path, metavar="BRIEF.toml")
    made = command(
        "setout", set_out, "set a brief's piece out for the shop: a page, lists as CSV, drawings as SVG and PDF"
    )
    made.add_argument("brief", type=file_path, metavar="BRIEF.toml")
    made.add_argument(
        "-o",
        "--output",
        type=folder_path,
        metavar="FOLDER",
        help="the folder to write them into, made where "
        "there is none; left out, beside the brief: seat-shop for seat.toml. No file is written over",
    )
    made.add_argument(
        "--way",
        default="",
        metavar="WAY",
        help='a way to build instead of the one decided on, for example "breadboard end"',
    )
    text = "what to do after a mishap in the shop: a step in a joint, a hole that is off, wood that moved"
    made = command("what-now", answer_a_mishap, text)
    made.add_argument("brief", type=file_path, metavar="BRIEF.toml")
    made.add_argument(
        "mishap", nargs="?", default="", metavar="MISHAP", help="step, moved, short, narrow, knot, hole, moisture"
    )
    made.add_argument("value", nargs="?", default="", metavar="VALUE", help='how much: "1/32 in", "1 mm", "10 %%"')
    made.add_argument("--way", default="", metavar="WAY", help="a way to build instead of the one decided on")
    text = "how far a board moves, in one line: WIDTH WOOD CUT FROM TO"
    made = command("move", answer_at_the_bench, text)
    text = 'for example "18 in" "white ash" flatsawn 35%% 65%%; 8%% 12%% MC for moisture of the wood instead of air'
    made.add_argument("question", nargs="+", metavar="WORD", help=text)
    made.add_argument("--why", action="store_true", help="the steps to the answer")
    made.add_argument(
        "--ends", default="", metavar="BORDER", help='what a border of this width glued across both ends does: "2 in"'
    )
    made.add_argument("--at", default="", metavar="TEMPERATURE", help='of the room; left out, "70 degF"')
    made.add_argument(
        "--thickness", default="", metavar="SIZE", help='of the panel with glued ends; left out, "3/4 in"'
    )
    made.add_argument(
        "--length", default="", metavar="SIZE", help="of the panel with glued ends; left out, twice its width"
    )
    text = (
        "note a meter reading, or a width or gap of the delivered piece, beside its brief; without one, what they say"
    )
    made = command("note", note_beside_a_brief, text)
    made.add_argument("brief", type=file_path, metavar="BRIEF.toml")
    text = 'for example 9.1%% 2026-03-02, or width "507 mm", or gap "3/16 in"; without a day, today'
    made.add_argument("note", nargs="*", metavar="WORD", help=text)
    made = command("test-piece", answer_for_a_piece, "how far your boards move, by a piece of them measured twice")
    text = 'for example "white oak" "100 mm" 12%% "98.9 mm" 8%%; with --oven-dry, weights instead of moistures'
    made.add_argument("question", nargs="+", metavar="WORD", help=text)
    made.add_argument("--oven-dry", default="", metavar="WEIGHT", help='its weight dried in an oven: "100.0 g"')
    made.add_argument("--rings", default="flatsawn", metavar="CUT", help="flatsawn, riftsawn or quartersawn")
    text = "everything for a class in one folder: lessons as pages, worksheets and their key, teacher's sheets"
    made = command("class", write_for_a_class, text)
    made.add_argument("-o", "--output", type=folder_path, required=True, metavar="FOLDER", help="a new folder")
    made.add_argument("--students", type=int, metavar="COUNT", help="how many; left out, twelve, or as many as names")
    made.add_argument("--names", type=file_path, metavar="FILE", help="a text file with one name a line")
    text = "any word: the same one gives the same numbers again"
    made.add_argument("--seed", default="woodlib", metavar="WORD", help=text)
    made.add_argument("--replace", action="store_true", help="write a folder that this command made anew")
    text = "judge many woods, places and widths at once, each with sampled boards and houses; stopped, it goes on where it was"
    made = command("survey", run_survey, text)
    made.add_argument("table", type=file_path, metavar="TABLE.csv", help="or .parquet; a map is drawn beside it as SVG")
    for name, usual, what in SURVEYED:
        made.add_argument(f"--{name}", nargs="+", default=usual, metavar=name[:-1].upper(), help=what)
    made.add_argument("--cut", default="flatsawn", metavar="CUT", help="flatsawn, riftsawn or quartersawn")
    made.add_argument("--boards", type=int, default=400, metavar="N", help="boards and houses drawn for each cell")
    made.add_argument("--workers", type=int, default=1, metavar="N", help="processes that share the work")
    made.add_argument("--map", default="24 in", metavar="WIDTH", help="the width that the map shows")
    made = command("hub", start_a_hub, "a live class: a server on this computer, with the lessons for each student")
    made.add_argument("folder", type=folder_path, metavar="FOLDER", help="where the hub and the students' work live")
    made.add_argument("--students", type=int, metavar="COUNT", help="how many; left out, twenty, or as many as names")
    made.add_argument("--names", type=file_path, metavar="FILE", help="a text file with one name a line")
    made.add_argument("--room", action="store_true", help="answer the whole room, not this computer alone")
    made.add_argument("--port", type=int, default=8000, metavar="NUMBER", help="left out, 8000")
    command("forget", forget_tables, "take away the tables of frozen studies that are kept in your cache folder")
    made = command("test", run_tests, "run the tests: the library's, the notebooks', the browser's", extra="test")
    text = "library, notebooks or browser, all three when left out; quick for a minute's worth; search to look further"
    made.add_argument("parts", nargs="*", type=test_part, metavar="PART", help=text)
    text = "for contributors: run notebooks from top to bottom and store their outputs"
    command("proof", show_proof, "print every check against the outside world, and how well it is met", extra="test")
    made = command("refresh", refresh_notebooks, text, extra="test")
    made.add_argument("notebooks", nargs="*", type=Path, metavar="NOTEBOOK", help="all of them when left out")
    made = command("bench", run_benchmarks, "for contributors: run the speed comparisons", extra="test")
    made.add_argument("names", nargs="*", metavar="NAME", help="for example import; all of them when left out")
    text = "compare with another commit: a folder with a checkout of it"
    made.add_argument("--against", type=folder_path, metavar="FOLDER", help=text)
    made.add_argument("--tests", action="store_true", help="with --against: time the whole test command of both, too")
    return top


SURVEYED = (
    ("woods", (), "names of woods; left out, eight that are often used"),
    ("places", (), "names of places; left out, every one there is"),
    ("widths", tuple(f"{inches} in" for inches in range(6, 43, 6)), "widths across the grain"),
    ("ways", (), "keys of ways to build; left out, the usual six"),
)


def file_path(text: str) -> Path:
    """The path of a file; a folder such as "." has no name of its own."""
    if not text.strip() or not Path(text).name:
        raise argparse.ArgumentTypeError(f"{text!r} is not the name of a file; write one, for example seat.toml")
    return Path(text)


def folder_path(text: str) -> Path:
    """The path of a folder."""
    if not text.strip():
        raise argparse.ArgumentTypeError(f"{text!r} is not the name of a folder; write one, for example seat-shop")
    return Path(text)


def test_part(name: str) -> str:
    """One of the parts of the tests."""
    known = (*PARTS, *FURTHER)
    if name not in known:
        raise argparse.ArgumentTypeError(f"there is no part {name!r}; the parts are {', '.join(known)}")
    return name


def open_notebooks(chosen: argparse.Namespace) -> int:
    """Start JupyterLab at the start page."""
    from .opening import open_lab

    return open_lab(chosen.folder, chosen.passed_on)


def write_brief(chosen: argparse.Namespace) -> int:
    """Write a documented brief to a new file, or ask for what stands in it."""
    from .new_brief import new_brief

    print("\n".join(new_brief(chosen.file, chosen.kind)))
    return 0


def write_handout(chosen: argparse.Namespace) -> int:
    """Run the main job without a screen: from a brief to the client's file, the shop's folder, or both."""
    from .handout import write_handout as write
    from .handout.write import checked_target

    output = chosen.output or chosen.brief.with_suffix(".html")
    if chosen.reader == "both":
        checked_target(output)  # the shop's papers are not written where the page cannot be
    if chosen.reader != "client":
        write_shop(chosen.brief, output.with_name(f"{output.stem}-shop"), "")
    if chosen.reader != "shop":
        print(f"Wrote {write(chosen.brief, output, show_progress, show_accepted)}")
    return 0


def answer_at_the_bench(chosen: argparse.Namespace) -> int:
    """How far a board moves, in one line."""
    from .quick_answer import answer, read_question

    question = read_question(chosen.question, chosen.at, chosen.thickness, chosen.length)
    print("\n".join(answer(question, chosen.why, chosen.ends)))
    return 0


def note_beside_a_brief(chosen: argparse.Namespace) -> int:
    """Append a note, and say what all of them mean."""
    from .commission.card import told
    from .commission.checked import judged_brief
    from .commission.notes import add_note, note_lines, read_note

    commission = judged_brief(chosen.brief)
    if chosen.note:
        print(f"Noted in {add_note(chosen.brief, read_note(chosen.note)).name}.")
    lines = [told(words, commission.first) for words in note_lines(commission)]
    print("\n".join(lines) or "No notes are beside this brief yet.")
    return 0


def answer_for_a_piece(chosen: argparse.Namespace) -> int:
    """What a test piece says about its boards."""
    from .piece_answer import answer

    print("\n".join(answer(chosen.question, chosen.oven_dry, chosen.rings)))
    return 0


def answer_a_mishap(chosen: argparse.Namespace) -> int:
    """What to do after a mishap, from the plan of a brief."""
    from .commission.checked import judged_brief
    from .commission.what_now import answer_lines

    commission = judged_brief(chosen.brief)
    commission = commission.building(chosen.way) if chosen.way else commission
    print("\n".join(answer_lines(commission, chosen.mishap, chosen.value)))
    return 0


def show_verdicts(chosen: argparse.Namespace) -> int:
    """The ways to build the piece of a brief, ranked."""
    from .commission.checked import judged_brief
    from .commission.verdicts import verdict_lines

    commission = judged_brief(chosen.brief)
    show_remarks(commission.brief.remarks)
    print("\n".join(verdict_lines(commission)))
    return 0


def show_remarks(remarks) -> None:
    """Say what is unusual and was taken as written."""
    for remark in dict.fromkeys(remarks):
        print(f"Please check: {remark}", file=sys.stderr)


def write_for_a_class(chosen: argparse.Namespace) -> int:
    """Write everything for a class into a folder."""
    from .classroom.folder import TEACHER, write_class
    from .classroom.names import clean_name, read_names, students
    from .opening import notebooks_folder

    names = students(chosen.students, read_names(chosen.names) if chosen.names else ())
    seed = clean_name(chosen.seed)
    written = write_class(chosen.output, notebooks_folder(), names, seed, chosen.replace, partial(print, flush=True))
    print(f"Wrote {len(written)} files into {chosen.output}; begin at index.html, and keep {TEACHER} to yourself.")
    return 0


def run_survey(chosen: argparse.Namespace) -> int:
    """Write the table of a survey and its map."""
    from .survey.run import write_survey

    asked = {name: getattr(chosen, name) for name, _, _ in SURVEYED}
    written = write_survey(
        chosen.table, chosen.map, chosen.workers, show_progress, cut=chosen.cut, samples=chosen.boards, **asked
    )
    print("\n".join(written))
    return 0


def start_a_hub(chosen: argparse.Namespace) -> int:
    """Start a hub and run it until it is stopped."""
    from .classroom.names import read_names, students
    from .hub.start import start_hub

    listed = read_names(chosen.names) if chosen.names else ()
    names = students(chosen.students if listed or chosen.students is not None else 20, listed)
    return start_hub(chosen.folder, names, "0.0.0.0" if chosen.room else "127.0.0.1", chosen.port)


def forget_tables(chosen: argparse.Namespace) -> int:
    """Empty the folder of kept tables and say where it is."""
    from .handout.cache import forget

    folder, count = forget()
    print(f"Took {count} tables away from {folder}; the next handout makes what it needs anew.")
    return 0


def set_out(chosen: argparse.Namespace) -> int:
    """Set out the piece of a brief and write lists and drawings for the shop."""
    write_shop(chosen.brief, chosen.output or chosen.brief.with_name(f"{chosen.brief.stem}-shop"), chosen.way)
    return 0


def write_shop(brief, folder, way: str) -> None:
    """The shop's papers of a brief, into a folder."""
    from .commission.shop_files import write_shop_files
    from .handout.client_page import shop_page

    written = write_shop_files(brief, folder, way, show_set_out, {"shop.html": shop_page})
    print(f"Wrote {', '.join(path.name for path in written)} into {folder}")


def show_set_out(plan, brief) -> None:
    """Say how the piece is built, and what is to be checked before it is cut."""
    if plan.short:
        print(plan.short, flush=True)
    show_remarks([*brief.remarks, *(warning for item in plan.hardware for warning in item.warnings)])
    print(f"Set out: {plan.made.way.name}.", flush=True)


def show_accepted(brief) -> None:
    """Say what is unusual about a brief that was accepted, and that the long part begins."""
    show_remarks(brief.remarks)
    print(f"Making the page for {brief.path}; the first time takes some seconds.", flush=True)


def show_progress(done: int, total: int) -> None:
    """How far the page is, on one line, where the screen can be written over."""
    if sys.stdout.isatty():
        print(f"\r  {100 * done // total} % done", end="\n" if done == total else "", flush=True)


def run_tests(chosen: argparse.Namespace) -> int:
    """Run the tests, or the parts of them that were named."""
    return run_parts(working_copy(), chosen.parts)


def show_proof(chosen: argparse.Namespace) -> int:
    """The table of checks against the outside world."""
    return run_parts(working_copy(), ["proof"])


def refresh_notebooks(chosen: argparse.Namespace) -> int:
    """Run notebooks top to bottom and store their outputs in the form that is committed."""
    return run_script(working_copy() / "tests" / "refresh_notebooks.py", [str(path) for path in chosen.notebooks])


def run_benchmarks(chosen: argparse.Namespace) -> int:
    """Run the scripts of ``tests/bench``, one after the other so that none disturbs the next."""
    folder = working_copy() / "tests" / "bench"
    return run_speed_comparisons(folder, chosen.names, chosen.against, chosen.tests)


def working_copy() -> Path:
    """The project's folder; raises :class:`SetUpError` when there is only the installed package."""
    project = environment.project_folder()
    if project is None:
        raise environment.SetUpError(
            "This command needs a working copy of the project, and woodlib runs from an installed package here."
        )
    return project
