"""The order to tick: every step once, each caution at the step where it is first needed, and lists that say the same."""

import csv
import io

import pytest

from woodlib.brief import read_brief
from woodlib.commission import commission_of, setting_out_of
from woodlib.commission.shop import order_of_cuts, shop_cautions
from woodlib.commission.shop_files import shop_files
from woodlib.data_files import data_path
from woodlib.setting_out.order import usual_steps
from woodlib.setting_out.work_lists import buy_rows, caution_text, glue_rows, order_rows
from woodlib.setting_out.work_order import groove_rows, machine_of, machines, work_order
from woodlib.tables import rows
from woodlib.ways.registry import every_way

DEMO = data_path("briefs/reading_nook_seat.toml").read_text(encoding="utf-8")
CUTTING = ("cut ", "saw", "rip", "plane ", "plough", "drill", "bore", "joint ", "turn ", "flatten", "crosscut")
BY_HAND = {"plane the edging flush"}


def seat(folder, *changes, way="breadboard"):
    text = DEMO
    for before, after in changes:
        assert before in text
        text = text.replace(before, after, 1)
    (folder / "seat.toml").write_text(text, encoding="utf-8")
    return commission_of(read_brief(folder / "seat.toml"), way)


def listed(plan, cuts, name):
    return list(csv.DictReader(io.StringIO(shop_files(plan, cuts)[name]().decode())))


def test_every_cut_of_every_way_has_a_machine_and_its_caution():
    steps = [*usual_steps(True, True, True), *usual_steps(sections=True), *usual_steps(glued_up=False)]
    steps += [step for way in every_way() for step in way.order]
    without = {step.name for step in steps if step.name.startswith(CUTTING) and not machine_of(step)}
    assert without <= BY_HAND
    made = {face for step in steps for face in step.makes} | {"hardware holes", "finish"}
    assert set(machines()) <= made, set(machines()) - made
    assert all(row["caution"].endswith(".") and row["source"] for row in rows("work_cautions.csv"))


@pytest.mark.parametrize("way", ["breadboard", "frame_panel", "battens", "edged_sheet"])
def test_each_caution_stands_once_where_it_is_first_needed(tmp_path, way):
    plan = setting_out_of(seat(tmp_path, way=way))
    jobs = work_order(plan)
    assert [job.step for job in jobs] == list(plan.order.names)
    cautions = [caution for job in jobs for caution in job.cautions]
    assert len(cautions) == len(set(cautions))
    own = {caution.words for caution in plan.cautions if caution.at != "always"}
    assert own <= set(cautions)
    for job, step in zip(jobs, plan.order.steps, strict=True):
        earlier = [machine_of(other) for other in plan.order.steps[: plan.order.steps.index(step)]]
        machine = machine_of(step)
        assert bool(machine and machine not in earlier) <= bool(job.cautions)


def test_the_page_the_list_and_the_text_say_the_same(tmp_path):
    found = seat(tmp_path)
    plan = setting_out_of(found)
    page, text = order_of_cuts(plan), caution_text(plan)
    assert page.html.count('<label><input type="checkbox">') == len(plan.order.names)
    for row in listed(plan, found.built.cuts, "order-list.csv"):
        assert f"{row['number']}. [ ] {row['step'][0].upper()}{row['step'][1:]}." in page.text and not row["done"]
        assert row["with"] in page.text and row["take care"] in page.text
        assert all(sentence in text for sentence in filter(None, [row["take care"]]))
    assert all(caution.words in str(shop_cautions(plan)) for caution in plan.cautions if caution.at == "always")


def test_a_heavy_lid_is_warned_of_where_it_is_hung(tmp_path):
    jobs = work_order(setting_out_of(seat(tmp_path)))
    (heavy,) = [job.step for job in jobs if "this lid falls hard" in " ".join(job.cautions)]
    assert heavy == jobs[-1].step


def test_glue_is_listed_with_its_clamps_and_its_time(tmp_path):
    found = seat(tmp_path)
    plan = setting_out_of(found)
    glued = glue_rows(plan)
    assert [row["glued"] for row in glued] == [one.name for one in plan.glue_up.goes]
    assert sum(int(row["lines"]) for row in glued) == len(plan.boards.strips) - 1
    assert {row["open time of the glue, minutes"] for row in glued} == {"10"}
    said = " ".join(row["with"] for row in order_rows(plan))
    assert all(f"{row['clamps']} clamps that open {row['clamps open at least']}" in said for row in glued)


def test_slots_say_their_part_their_reach_and_their_place(tmp_path):
    found = seat(tmp_path)
    plan = setting_out_of(found)
    gaps = listed(plan, found.built.cuts, "gap-list.csv")
    slots = [row for row in gaps if row["from the left end"]]
    holes = [row for row in listed(plan, found.built.cuts, "hole-list.csv") if row["slot in"]]
    assert len(slots) == len(holes) == 8 and {row["part"] for row in slots} == {"tongue"}
    for slot, hole in zip(slots, holes, strict=True):
        assert slot["feature"] == f"slot for {hole['hole']}" and slot["size"] == hole["slot across the grain"]
        assert f"from the centre {slot['outward']} outward, {slot['inward']} inward" == hole["middle of the slot"]


def test_the_cutter_for_a_groove_is_one_that_the_shop_has(tmp_path):
    # A frame of 7/8 in: a third is 7/24, its cutter 5/16. A shop that has 1/4 alone ploughs 1/4.
    plan = setting_out_of(seat(tmp_path, way="frame_panel"))
    assert [how for _, how in groove_rows(plan)] == ["cutter 5/16 in, in one pass"]
    own = setting_out_of(seat(tmp_path, ("[finish]", '[shop]\ncutters = ["1/4 in"]\n[finish]'), way="frame_panel"))
    assert [how for _, how in groove_rows(own)] == ["cutter 1/4 in, in one pass"]


def test_what_to_have_beside_the_boards(tmp_path):
    plan = setting_out_of(seat(tmp_path))
    have = {row["what"]: row["how much"] for row in buy_rows(plan)}
    dowels = sum(len(joint.wanted_m) for joint in plan.joints)
    assert have["dowels"].startswith(f"{dowels}, 3/8 in (9.5 mm) thick, 2 in (50.8 mm) long")
    assert have["drills for the hardware"] == "15/64 in"
    assert "pints" in have[plan.finish.called]
