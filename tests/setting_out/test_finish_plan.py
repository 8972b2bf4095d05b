"""The finish as part of the plan: days by hand, every face alike, and when the piece may go to its house."""

from fractions import Fraction

import pytest

from woodlib.brief import read_brief
from woodlib.commission import commission_of, setting_out_of
from woodlib.commission.in_the_shop import the_finish
from woodlib.data_files import data_path
from woodlib.moisture.finishes import BARE, all_finishes, find_finish
from woodlib.setting_out.finish_plan import finish_plan
from woodlib.setting_out.work_lists import finish_rows
from woodlib.tables import rows

DEMO = data_path("briefs/reading_nook_seat.toml").read_text(encoding="utf-8")
SIZE = Fraction(1), Fraction(1, 2), Fraction(1, 50)


def told(folder, finish, moisture="8 %", way="breadboard"):
    head, rest = DEMO.split("[finish]")
    rest = rest[rest.index("\n[", 1) :]
    (folder / "seat.toml").write_text(
        f"{head}{finish}{rest}".replace('moisture = "8 %"', f'moisture = "{moisture}"'), encoding="utf-8"
    )
    plan = setting_out_of(commission_of(read_brief(folder / "seat.toml"), way))
    return plan, str(the_finish(plan))


def test_days_by_hand():
    # Oil: two days between coats, three until it may be handled, three weeks until it is hard. 2 x (0.5 + 0.02 + 0.01) m2.
    plan = finish_plan(find_finish("linseed oil", 3), None, SIZE, False)
    assert plan.coats == (0, 2, 4) and (plan.handle_day, plan.cured_day) == (7, 25)
    assert plan.area_m2 == pytest.approx(1.06) and plan.litres == pytest.approx(3 * 1.06 / 15)
    # Shellac: four coats a day, so six take into the second.
    assert finish_plan(find_finish("shellac", 6), None, SIZE, False).coats == (0, 0, 0, 0, 1, 1)


@pytest.mark.parametrize("finish", all_finishes(), ids=lambda finish: finish.label)
def test_every_finish_has_days_that_follow_each_other(finish):
    plan = finish_plan(finish, None, SIZE, True)
    assert len(plan.coats) == finish.coats and list(plan.coats) == sorted(plan.coats)
    assert plan.coats[-1] < plan.handle_day <= plan.cured_day and plan.litres > 0


def test_every_row_of_days_names_a_finish():
    names = {finish.name for finish in all_finishes()} | {"any other"}
    assert {row["finish"] for row in rows("finish_days.csv")} <= names


def test_bare_wood_has_no_coats():
    plan = finish_plan(BARE, None, SIZE, True)
    assert plan.bare and plan.litres == 0 and plan.note == ""


def test_what_stays_bare_is_named(tmp_path):
    _, said = told(tmp_path, '[finish]\nname = "varnish"\ncoats = 3\n')
    assert "Coat both faces on the same day, edges and ends too" in said
    assert "Keep bare until they are glued: edges of the strips." in said
    assert "Where parts slide (left end piece, right end piece)" in said
    _, framed = told(tmp_path, '[finish]\nname = "varnish"\ncoats = 3\n', way="frame_panel")
    assert "Keep bare until they are glued: edges of the strips, tenon cheek." in framed


def test_when_it_may_go_to_its_house(tmp_path):
    plan, dry = told(tmp_path, '[finish]\nname = "varnish"\ncoats = 3\n')
    driest = plan.verdict.quantities["driest_mc"]
    assert 8.0 - driest > 1.0 and "it may go from day 5, with the last coat on every face" in dry
    _, at_rest = told(tmp_path, '[finish]\nname = "varnish"\ncoats = 3\n', moisture=f"{driest:.1f} %")
    assert "It may go to its house from day 5: wood at" in at_rest and "is never dried far there" in at_rest
    assert [row["day"] for row in finish_rows(plan)] == ["0", "1", "2", "5", "16"]


def test_a_finish_that_hardly_slows_the_wood_is_said_to(tmp_path):
    # Linseed oil: three coats keep out nothing after two weeks (Wood Handbook, Table 16-3); varnish does.
    _, oil = told(tmp_path, '[finish]\nname = "linseed oil"\ncoats = 3\n')
    _, varnish = told(tmp_path, '[finish]\nname = "varnish"\ncoats = 3\n')
    assert "almost as if it were bare" in oil and "almost as if it were bare" not in varnish
    _, bare = told(tmp_path, "")
    assert "Nothing that hardens is put on" in bare


def test_a_finish_is_called_as_the_brief_calls_it(tmp_path):
    plan, said = told(tmp_path, '[finish]\nname = "hardwax oil"\n')
    assert plan.finish.called == "hardwax oil, counted as Linseed oil, 3 coats"
    assert "coat 1 of hardwax oil, both faces, edges and ends" in said
