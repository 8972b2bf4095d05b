"""Bad inputs on the road from a brief to the shop: boards, places of hardware, verdicts, folders; one sentence each."""

import os
from dataclasses import replace
from pathlib import Path

import pytest
from bad_inputs.test_brief import GOOD, brief_of

from woodlib.commission import commission_of, shop_cards
from woodlib.commission.shop import setting_out_of
from woodlib.commission.shop_files import write_shop_files
from woodlib.data_files import data_path
from woodlib.errors import InputError, WoodlibError
from woodlib.setting_out.plan import set_out
from woodlib.ways.index import verdict_for
from woodlib.ways.piece import Piece

BOARD = '[[boards]]\nname = "A"\nwidth = "6 in"\nlength = "8 ft"\nthickness = "1 in"\n'
LAST = GOOD.count("\n")  # the boards stand below
DEMO = data_path("briefs/reading_nook_seat.toml")

# what is replaced in the good brief with a board, by what, the line it is on, fragment of the sentence
MISTAKES = [
    (
        'kind = "seat"',
        'kind = "drawer"',
        3,
        "write one of lid, seat, table top, shelf, door panel, board, frame, back, drawer",
    ),
    ('kind = "seat"', 'kind = "turned"', 3, "did you mean turned part?"),
    ('moisture = "8 %"', 'moisture = "8 %"\nout_of_flat = "-1 mm"', 13, "wood.out_of_flat is '-1 mm'"),
    ('moisture = "8 %"', 'moisture = "8 %"\nout_of_flat = "4 in"', 13, "it must be at most"),
    (
        'moisture = "8 %"',
        'moisture = "8 %"\nout_of_flat = 2',
        13,
        "wood.out_of_flat is 2, a plain number without a unit",
    ),
    ('name = "pull"', f'name = "{"x" * 201}"', 21, "hardware.name has 201 characters; at most 200"),
    ('name = "pull"', 'name = "p\\u2028q"', 21, "write a name of up to 200 letters"),
    ('name = "A"', f'name = "{"x" * 61}"', LAST + 2, "write a name of up to 60 letters"),
    ('name = "pull"', 'name = "pull"\ninset = "20 mm"\nscrew = "1 kg"', 23, "hardware.screw is '1 kg'"),
    ('name = "pull"', 'name = "pull"\nscrew = "1 in"', 22, "hardware.screw is '1 in'; it must be at most"),
    ('name = "pull"', 'name = "pull"\ninset = "0 in"', 22, "hardware.inset is '0 in'; it must be at least"),
    # The first pull runs across the grain of a seat 20 x 44 in, the second along it, at centres of 96 mm.
    (
        'name = "pull"',
        'name = "pull"\nmiddle = "19 in"',
        22,
        "a hole would lie beside the piece; write 2-33/64 in (64 mm) to",
    ),
    (
        'name = "pull"',
        'name = "pull"\nmiddle = "1 in"',
        22,
        "with piece.width '20 in' a hole would lie beside the piece",
    ),
    (
        'name = "second pull"',
        'name = "second pull"\nmiddle = "43 in"',
        26,
        "with piece.length '44 in' a hole would lie",
    ),
    ('name = "second pull"', 'name = "second pull"\ninset = "21 in"', 26, "its holes would lie beside the piece"),
    ('name = "second pull"', 'name = "second pull"\ninsert = "1 in"', 26, "did you mean hardware.inset?"),
    ('name = "A"\n', "", LAST + 1, 'boards.name is missing; write name = "A"'),
    ('name = "A"', "name = 7", LAST + 2, "boards.name is 7, not text"),
    ('name = "A"', 'name = ""', LAST + 2, "boards.name is empty"),
    ('width = "6 in"', "width = 6", LAST + 3, "boards.width is 6, a plain number"),
    ('width = "6 in"', 'width = "6 ft"', LAST + 3, "boards.width is '6 ft'; it must be at most"),
    ('width = "6 in"', 'width = "6 lb"', LAST + 3, "boards.width is '6 lb'"),
    ('length = "8 ft"', 'length = "80 ft"', LAST + 4, "boards.length is '80 ft'"),
    ('length = "8 ft"\n', "", LAST + 1, "boards.length is missing"),
    ('thickness = "1 in"', 'thickness = "4/4"', LAST + 5, "a fraction without a unit"),
    ('thickness = "1 in"', 'thickness = "0 in"', LAST + 5, "it must be at least"),
    (
        'thickness = "1 in"',
        'thickness = "1 in"\ncount = 0',
        LAST + 6,
        "boards.count is 0; write a whole number from 1 to 60",
    ),
    ('thickness = "1 in"', 'thickness = "1 in"\ncount = "two"', LAST + 6, "boards.count is 'two'"),
    ('thickness = "1 in"', 'thickness = "1 in"\nheight = "1 in"', LAST + 6, "'boards.height' is not a key of a brief"),
    ('thickness = "1 in"\n', f'thickness = "1 in"\n{BOARD}', LAST + 7, "which another board is called already"),
    (
        BOARD,
        "".join(f'[[hardware]]\nname = "{n}"\ncentres = "9 mm"\nruns = "along the grain"\n' for n in range(59)),
        LAST + 4 * 58 + 1,
        "hardware holds 61 tables; at most 60 can be set out",
    ),
    (BOARD, 'boards = "six"\n', LAST - 2, "'hardware.boards' is not a key of a brief; did you mean boards?"),
    (BOARD, "[boards]\n", LAST + 1, "boards is not a list of tables; head each one with [[boards]]"),
    (BOARD, "".join(BOARD.replace('"A"', f'"{n}"') for n in range(61)), LAST + 301, "at most 60 can be laid out"),
]


@pytest.mark.parametrize(("before", "after", "line", "fragment"), MISTAKES)
def test_one_mistake_gives_one_sentence_with_its_line(tmp_path, before, after, line, fragment):
    text = GOOD + BOARD
    place = text.rindex(before) if before in BOARD and before in GOOD else text.index(before)
    with pytest.raises(WoodlibError) as caught:
        brief_of(tmp_path, text[:place] + text[place:].replace(before, after, 1))
    matching = [sentence for sentence in caught.value.problems if fragment in sentence]
    assert len(matching) == 1, caught.value.problems
    if "hardware.boards" not in fragment:
        assert matching[0].startswith(f"seat.toml, line {line}: "), matching[0]
    assert all(len(sentence.splitlines()) == 1 and len(sentence) < 500 for sentence in caught.value.problems)


def test_the_brief_with_a_board_is_read(tmp_path):
    found = brief_of(tmp_path, GOOD + BOARD)
    assert [(board.name, board.count) for board in found.boards] == [("A", 1)] and found.stock.out_of_flat_m == 0.0


def test_all_mistakes_about_boards_come_at_once(tmp_path):
    bad = BOARD.replace('"6 in"', "6").replace('"8 ft"', '"80 ft"').replace('"A"', "7")
    with pytest.raises(InputError) as caught:
        brief_of(tmp_path, GOOD.replace('name = "pull"', 'name = "pull"\ninset = "9 ft"') + bad)
    assert len(caught.value.problems) == 4


def written(tmp_path, *changes):
    text = DEMO.read_text(encoding="utf-8")
    for before, after in changes:
        assert before in text
        text = text.replace(before, after)
    path = tmp_path / "seat.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_a_verdict_has_to_be_one_and_for_this_piece():
    from woodlib.commission import chosen_brief

    brief = chosen_brief()
    with pytest.raises(InputError, match="verdict is 'frame'; it must be of kind Verdict"):
        set_out(brief, verdict="frame")
    other = verdict_for("battens", Piece("white oak", "18 in", "44 in", "7/8 in", "2 in"), 8, [8.0] * 12)
    with pytest.raises(
        InputError, match="the verdict is for a piece whose width is 18 in .457.2 mm., but the brief's is 20 in"
    ):
        set_out(brief, verdict=other)


def test_boards_given_in_code_that_do_not_reach_are_refused_and_those_of_the_brief_are_told(tmp_path):
    from woodlib.brief import read_brief
    from woodlib.setting_out.boards import StockBoard

    found = commission_of(read_brief(DEMO), "battens")
    with pytest.raises(InputError, match="add boards, or allow less trim"):
        set_out(found.brief, [StockBoard("short", "6 in", "30 in", "1 in")], found.built)
    brief = read_brief(written(tmp_path, ("count = 3\n", "")))
    plan = set_out(brief, verdict=found.built)
    assert plan.short.startswith("The boards on hand do not make this panel: stock gives")
    # One A of 6-1/4 in gives two strips of 6-3/16, jointed; the rest comes from boards of 6 in, 5-15/16 jointed.
    names = [strip.board for strip in plan.boards.strips]
    assert plan.boards.bought == names.count("board to buy") > 0 and len(plan.joints) == len(names) - 1
    assert plan.boards.glued_m >= plan.glued_blank.width.total_m
    assert f"Set out with {plan.boards.bought} more board" in plan.short
    told = shop_cards(commission_of(brief, "battens")).text
    assert told.startswith(plan.short) and "bought is only what the panel lacks" in told


OFF_THE_WOOD = [
    # Typed on the opening they fit; on the part as it is cut they do not.
    ("drawer_front", (('inset = "3/4 in"', 'inset = "19.9 in"'),), "from the edge of wood that is only"),
    (
        "inset_panel",
        (('centres = "128 mm"\nruns = "along', 'centres = "43.95 in"\nruns = "along'),),
        "and the wood is only",
    ),
]


@pytest.mark.parametrize(("key", "changes", "fragment"), OFF_THE_WOOD)
def test_holes_that_fall_off_the_part_as_it_is_cut_are_reported_at_their_line(tmp_path, key, changes, fragment):
    from woodlib.brief import read_brief

    brief = read_brief(written(tmp_path, *changes))
    piece = Piece("white oak", "20 in", "44 in", "7/8 in", "2 in")
    verdict = verdict_for(key, piece, 8, [6.0, *[8.0] * 10, 12.0])
    with pytest.raises(InputError) as caught:
        set_out(brief, verdict=verdict)
    assert len(caught.value.problems) == 2
    assert all(s.startswith("seat.toml, line ") and fragment in s for s in caught.value.problems)


def test_a_sheet_thinner_than_its_veneer_is_refused(tmp_path):
    from woodlib.brief import read_brief

    brief = read_brief(written(tmp_path, ('thickness = "7/8 in"\nborder', 'thickness = "1.1 mm"\nborder')))
    piece = Piece("white oak", "20 in", "44 in", "1.1 mm", "2 in")
    with pytest.raises(InputError) as caught:
        set_out(brief, (), verdict_for("veneered_sheet", piece, 8, [8.0] * 12))
    assert len(caught.value.problems) == 3  # the sheet, and the edging of both directions
    assert all("would have a thickness of" in s and s.startswith("seat.toml, line ") for s in caught.value.problems)


def test_a_part_thicker_than_any_board_is_refused_at_its_line(tmp_path):
    from woodlib.brief import read_brief

    brief = read_brief(written(tmp_path, ('thickness = "7/8 in"\nborder', 'thickness = "5 in"\nborder')))
    piece = Piece("white oak", "20 in", "44 in", "5 in", "2 in")
    with pytest.raises(InputError, match="seat.toml, line 18: .*glue it up from two layers"):
        set_out(brief, (), verdict_for("battens", piece, 8, [8.0] * 12))


def test_the_shop_gets_the_brief_s_mistakes_and_writes_nothing(tmp_path):
    path = written(tmp_path, ('kind = "seat"', 'kind = "seet"'), ('width = "6-1/4 in"', "width = 6"))
    with pytest.raises(InputError) as caught:
        write_shop_files(path, tmp_path / "shop")
    assert len(caught.value.problems) == 2 and not (tmp_path / "shop").exists()


def test_files_that_are_there_are_named_and_nothing_is_written(tmp_path):
    folder = tmp_path / "shop"
    folder.mkdir()
    for name in ("piece.svg", "hole-list.csv"):
        (folder / name).write_text("mine")
    with pytest.raises(InputError) as caught:
        write_shop_files(DEMO, folder)
    assert len(caught.value.problems) == 2
    assert all("already and is left as it is" in sentence for sentence in caught.value.problems)
    assert sorted(path.name for path in folder.iterdir()) == ["hole-list.csv", "piece.svg"]
    assert (folder / "piece.svg").read_text() == "mine"


def test_a_link_to_nowhere_is_not_written_through(tmp_path):
    folder = tmp_path / "shop"
    folder.mkdir()
    (folder / "piece.pdf").symlink_to(tmp_path / "elsewhere.pdf")
    with pytest.raises(InputError, match=r"piece\.pdf is in .* already"):
        write_shop_files(DEMO, folder)
    assert not (tmp_path / "elsewhere.pdf").exists()


FOLDERS = [
    (None, "folder is 'None'"),
    ("", "folder is ''"),
    ("a\0b", "give the name of a folder"),
    ("{here}/no/shop", "There is no folder"),
    ("{here}/file", "is a file and not a folder"),
    ("{here}/" + "x" * 300, "cannot be"),
]


@pytest.mark.parametrize(("folder", "fragment"), FOLDERS)
def test_a_folder_that_cannot_be_is_refused(tmp_path, folder, fragment):
    (tmp_path / "file").write_text("mine")
    with pytest.raises(InputError) as caught:
        write_shop_files(DEMO, folder.format(here=tmp_path) if folder else folder)
    (sentence,) = caught.value.problems
    assert fragment in sentence and len(sentence.splitlines()) == 1


def test_a_folder_without_permission_is_refused_in_a_sentence(tmp_path, monkeypatch):
    """Whoever runs the tests may write anywhere, so the refusal of the system is played."""
    folder = tmp_path / "shop"
    folder.mkdir()

    usual = Path.open

    def refuse(path, mode="r", *more, **named):
        if "x" in mode:
            raise PermissionError(13, "Permission denied", str(path))
        return usual(path, mode, *more, **named)

    if os.geteuid() == 0:
        monkeypatch.setattr("pathlib.Path.open", refuse)
    else:
        folder.chmod(0o500)
    with pytest.raises(InputError, match=r"cannot be written \(Permission denied\); choose another folder"):
        write_shop_files(DEMO, folder)
    folder.chmod(0o700)
    assert list(folder.iterdir()) == []


def test_a_way_that_there_is_not_is_refused():
    with pytest.raises(InputError, match="^--way is 'walls'; the ways to build are: battens below"):
        write_shop_files(DEMO, "shop", "walls")
    with pytest.raises(
        InputError, match="^--way is 'drawer front', which is not among .* this seat: battens below"
    ) as caught:
        write_shop_files(DEMO, "shop", "drawer front")
    assert "_" not in str(caught.value)
    assert not os.path.exists("shop")


def test_a_hostile_name_stays_a_name(tmp_path):
    """Markup in a title or in a piece of hardware is text in every file, and no formula in a list."""
    path = written(
        tmp_path,
        ("Lift-up seat for a reading-nook bench", "</svg><script>alert(1)</script>"),
        ("left finger pull", "=HYPERLINK(1)"),
    )
    files = {file.name: file.read_bytes() for file in write_shop_files(path, tmp_path / "shop", "battens")}
    assert b"<script" not in files["piece.svg"] and b"&lt;script&gt;" in files["piece.svg"]
    assert b"'=HYPERLINK(1)" in files["hole-list.csv"] and b"\n=HYPERLINK" not in files["hole-list.csv"]
    assert files["piece.pdf"].startswith(b"%PDF-")


def test_the_same_brief_gives_the_same_files(tmp_path):
    first, second = (write_shop_files(DEMO, tmp_path / name) for name in ("one", "two"))
    assert [path.read_bytes() for path in first] == [path.read_bytes() for path in second]


def test_a_commission_that_cannot_be_set_out_says_so(tmp_path):
    from woodlib.brief import read_brief

    found = commission_of(read_brief(DEMO), "battens")
    with pytest.raises(InputError, match="the verdict is for a piece whose"):
        setting_out_of(
            replace(found, built=commission_of(read_brief(data_path("briefs/serving_board.toml")), "battens").built)
        )


def placed(*items: str) -> str:
    """A brief with this hardware, each as it is typed after its name and its runs."""
    start = GOOD[: GOOD.index("[[hardware]]")]
    tables = (f'[[hardware]]\nname = "pull {n}"\nruns = "{item}\n' for n, item in enumerate(items, start=1))
    return start + "".join(tables)


ACROSS, ALONG = 'across the grain"\n', 'along the grain"\n'
FIRST = GOOD[: GOOD.index("[[hardware]]")].count("\n") + 4  # what is typed after the runs of the first

# hardware on a seat of 20 in (508 mm) x 44 in (1117.6 mm), the way, lines, fragment of the sentence
NO_HOLE = [
    (
        (ALONG + 'inset = "5 mm"\nscrew = "20 mm"\ncentres = "96 mm"',),
        "battens",
        [FIRST],
        "from the edge it is measured from, and half",
    ),
    (
        (ALONG + 'inset = "506 mm"\nscrew = "5 mm"\ncentres = "96 mm"',),
        "battens",
        [FIRST],
        "5/64 in (2 mm) from the far edge",
    ),
    ((ACROSS + 'centres = "507 mm"',), "battens", [FIRST], "a slot would run out of the edge of wood that is 20 in"),
    ((ACROSS + 'centres = "100 mm"\nmiddle = "455 mm"',), "battens", [FIRST + 1], "a slot would run out of the edge"),
    ((ALONG + 'centres = "1116 mm"',), "battens", [FIRST], "would break out of the end of wood that is 44 in"),
    (
        (ALONG + 'centres = "3 mm"\nscrew = "10 mm"',),
        "battens",
        [FIRST],
        "so they run into each other; use wider centres",
    ),
    (
        (ACROSS + 'centres = "300 mm"\ninset = "3 in"',) * 2,
        "battens",
        [FIRST, FIRST + 5],
        "piece.width shared among 2 leaves 10 in (254 mm) for each",
    ),
    ((ALONG + 'centres = "96 mm"',) * 40, "battens", [FIRST + 4 * n for n in range(40)], "; write middle = for each"),
]


@pytest.mark.parametrize(("items", "way", "lines", "fragment"), NO_HOLE)
def test_holes_that_would_be_none_are_refused_at_their_lines(tmp_path, items, way, lines, fragment):
    found = commission_of(brief_of(tmp_path, placed(*items)), way)
    with pytest.raises(InputError) as caught:
        setting_out_of(found)
    sentences = caught.value.problems
    assert [s.split(": ")[0] for s in sentences] == [f"seat.toml, line {line}" for line in lines]
    assert all(fragment in s and len(s.splitlines()) == 1 for s in sentences)
    assert not any(f" -{digit}" in s for s in sentences for digit in range(10))


def test_fittings_across_the_grain_keep_their_middle_and_share_the_length(tmp_path):
    text = placed(ACROSS + 'centres = "300 mm"', ACROSS + 'centres = "450 mm"')
    plan = setting_out_of(commission_of(brief_of(tmp_path, text), "battens"))
    width, length = plan.made.size_m[1], plan.made.size_m[0]
    assert [item.pair.middle_m for item in plan.hardware] == [width / 2, width / 2]
    assert [item.inset_m for item in plan.hardware] == [length / 4, length * 3 / 4]
    line = placed(ACROSS + 'centres = "96 mm"\ninset = "3 in"', ACROSS + 'centres = "96 mm"\ninset = "3 in"')
    shared = setting_out_of(commission_of(brief_of(tmp_path, line), "battens"))
    assert [item.pair.middle_m for item in shared.hardware] == [width / 4, width * 3 / 4]


OVER_EACH_OTHER = [
    ((ALONG + 'centres = "96 mm"\nmiddle = "20 in"',) * 2, "pull 1 has holes that run into those of pull 2"),
    (
        (ALONG + 'centres = "96 mm"\nmiddle = "20 in"', ALONG + 'centres = "96 mm"\nmiddle = "21 in"'),
        "pull 1 lies over pull 2",
    ),
    (
        (
            ALONG + 'centres = "96 mm"\nmiddle = "20 in"',
            ACROSS + 'centres = "96 mm"\ninset = "460 mm"\nmiddle = "87 mm"',
        ),
        "pull 1 has holes that run into those of pull 2",
    ),
    ((ALONG + 'centres = "96 mm"\nmiddle = "20 in"', ALONG + 'centres = "96 mm"\nmiddle = "30 in"'), None),
]


@pytest.mark.parametrize(("items", "fragment"), OVER_EACH_OTHER)
def test_hardware_that_lies_over_other_hardware_is_told(tmp_path, items, fragment):
    plan = setting_out_of(commission_of(brief_of(tmp_path, placed(*items)), "battens"))
    said = [[w for w in item.warnings if "run into" in w or "lies over" in w] for item in plan.hardware]
    assert [len(each) for each in said] == ([0, 0] if fragment is None else [1, 1])
    assert fragment is None or fragment in said[0][0]


def test_one_hole_in_each_stile_names_both(tmp_path):
    plan = setting_out_of(commission_of(brief_of(tmp_path, placed(ACROSS + 'centres = "480 mm"')), "frame_panel"))
    assert any(
        "one hole in the front stile and one in the back stile" in w and "narrower centres" in w
        for w in plan.hardware[0].warnings
    )
