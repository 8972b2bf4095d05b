"""Weight, glue lines and what to buy."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from setting_out.lengths import INCH, lengths

from woodlib.setting_out.blank import blank_for
from woodlib.setting_out.buying import board_feet, rough_for, to_buy
from woodlib.setting_out.glue import area_of_lines_m2, clamp_places, glue_lines
from woodlib.setting_out.kernels import gravity_at, mass_kg
from woodlib.setting_out.practice import ShopPractice
from woodlib.setting_out.weight import weight_of
from woodlib.shop_sizes import sold
from woodlib.species import all_species, find_species

MM = Fraction(1, 1000)


def test_weight_by_hand():
    # White ash: specific gravity at 12 % 0.60, volumetric shrinkage 13.3 %. At 8 %: volume against green
    # 1 - 0.133*(1 - 12/30) = 0.9202 at 12 % and 1 - 0.133*(1 - 8/30) = 0.902467 at 8 %: gravity 0.60*0.9202/0.902467
    # = 0.611790. A board 1000 x 300 x 20 mm, 0.006 m3: 1000*0.611790*0.006*1.08 = 3.964399 kg; dry 3.670740 kg.
    ash = find_species("white ash")
    assert (ash.require("specific_gravity_12").number, ash.require("volumetric_shrinkage_percent").number) == (
        0.60,
        13.3,
    )
    weight = weight_of("white ash", 0.006, 8)
    assert weight.mid_kg == pytest.approx(3.964399, abs=1e-5) and weight.dry_kg == pytest.approx(3.670740, abs=1e-5)
    # The same board at 12 %: its dry wood and 12 % water.
    assert weight.at_kg(12) == pytest.approx(3.670740 * 1.12, abs=1e-5)
    # One board in ten lies outside 1.645 * 10 % either way.
    assert weight.low_kg == pytest.approx(3.964399 * (1 - 0.16448536), abs=1e-5)


def test_estimated_gravity_is_said():
    assert any("specific gravity is estimated" in remark for remark in weight_of("honeylocust", 0.01, 8).remarks)


WEIGHED = [
    wood for wood in all_species() if wood.get("specific_gravity_12") and wood.get("volumetric_shrinkage_percent")
]


@given(st.sampled_from(WEIGHED), lengths(50, 2000), lengths(50, 900), lengths(5, 80), lengths(1, 50), st.floats(0, 40))
def test_weight_grows_with_every_size(wood, long, wide, thick, more, moisture):
    base = weight_of(wood, float(long * wide * thick), moisture)
    for size in ((long + more) * wide * thick, long * (wide + more) * thick, long * wide * (thick + more)):
        assert weight_of(wood, float(size), moisture).mid_kg > base.mid_kg
    assert base.low_kg < base.mid_kg < base.high_kg and base.dry_kg <= base.mid_kg


@given(st.sampled_from(WEIGHED), st.floats(0, 60), st.floats(0.1, 30))
def test_damper_wood_is_heavier(wood, moisture, more):
    assert weight_of(wood, 0.01, moisture).at_kg(moisture + more) > weight_of(wood, 0.01, moisture).mid_kg


@given(st.floats(0.3, 1.2), st.floats(0.05, 0.25), st.floats(0, 30))
def test_dry_mass_is_the_same_at_every_moisture(gravity, shrinkage, moisture):
    at_12, now = (1 - shrinkage * (1 - m / 30) for m in (12, moisture))
    dry = mass_kg(now, gravity_at(gravity, shrinkage, moisture, 30), 0)
    assert dry == pytest.approx(mass_kg(at_12, gravity, 0), rel=1e-12)


def test_glue_lines_by_hand():
    # Four boards: 3 lines of 1000 x 25 mm = 0.075 m2; at 0.2 kg/m2 15 g. Clamps: 50 mm from each end, 900 mm between;
    # the edge board of 90 mm lets them sit 180 mm apart: 900/180 = 5 spaces, 6 clamps, 180 mm apart.
    # At 1 MPa one line of 0.025 m2 needs 25 000 N: 4167 N from each.
    practice = ShopPractice(clamp_end_m="50 mm", clamp_spacing_m="200 mm", glue_pressure_pa=1_000_000)
    glue = glue_lines(4, "1 m", "25 mm", edge_board_width="90 mm", practice=practice)
    assert glue.area_m2 == Fraction(75, 1000) and glue.glue_kg == pytest.approx(0.015)
    assert (glue.clamps, glue.spacing_m) == (6, 180 * MM)
    assert glue.force_n == pytest.approx(25_000 / 6)
    assert glue_lines(1, "1 m", "25 mm").says == "No glue line: the width comes from one board."
    assert area_of_lines_m2([("1 m", "25 mm")] * 3) == glue.area_m2


@given(lengths(50, 3000), lengths(10, 100), lengths(50, 400))
def test_clamps_are_mirrored_and_near_enough(length, end, spacing):
    places = clamp_places(length, end, spacing)
    assert all(a + b == length for a, b in zip(places, places[::-1], strict=True))
    assert all(b - a <= spacing for a, b in zip(places, places[1:], strict=False))


def test_buying_by_hand():
    # 48 x 24 in of 4/4: 48*24*1/144 = 8 board feet; a quarter for waste: 10. As a blank: 46 in + trims 2*1 = 48 in and
    # no kerf; 23-1/2 in + 2*1/4 = 24 in; 7/8 in + 2*1/32 = 15/16 in, held by 4/4.
    practice = ShopPractice(saw_kerf_m="0.5 mm", end_trim_m=INCH - MM / 2, edge_trim_m=INCH / 4 - MM / 2)
    purchase = to_buy(blank_for("46 in", "23-1/2 in", "7/8 in", practice=practice), waste=Fraction(1, 4))
    assert (purchase.rough.called, purchase.net_board_feet, purchase.board_feet) == ("4/4", 8, 10)
    # 10 board feet are 10*144 cubic inches = 1440*16.387064 cm3 = 23 597.4 cm3.
    assert float(purchase.volume_m3) == pytest.approx(0.02359737, abs=1e-8)
    assert board_feet("1/2 in", "12 in", "12 in") == 1  # counted as an inch


@given(
    lengths(100, 2000), lengths(50, 900), lengths(5, 70), st.integers(1, 9), st.sampled_from(["customary", "metric"])
)
def test_what_is_bought_holds_the_blanks(long, wide, thick, count, system):
    blank = blank_for(long, wide, thick)
    purchase = to_buy(blank, count=count, system=system)
    assert purchase.net_m3 >= count * blank.volume_m3 and purchase.volume_m3 >= purchase.net_m3
    assert purchase.rough.size_m >= blank.thickness.total_m
    assert to_buy(blank, count=count + 1, system=system).board_feet > purchase.board_feet


def test_rough_thicknesses_are_in_order():
    for system in ("customary", "metric"):
        boards = [rough.size_m for rough in sold("rough thickness", system)]
        assert boards == sorted(boards) and rough_for(boards[2], system).size_m == boards[2]


def test_thin_stock_may_be_resawn():
    # 1/4 in needs 5/16, under three quarters of 4/4; 7/8 needs 15/16.
    assert "4/4, or resaw thicker boards" in to_buy(blank_for("20 in", "10 in", "1/4 in")).says
    assert "resaw" not in to_buy(blank_for("20 in", "10 in", "7/8 in")).says
