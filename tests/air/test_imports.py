"""The air and moisture modules stay light and low: no drawing, no widgets, nothing from further up the job."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

_ROOT = Path(__file__).resolve().parents[2]

_SCRIPT = """
import sys
import woodlib.air.climates, woodlib.air.hygrometer_log, woodlib.air.indoors, woodlib.air.weather_file
import woodlib.moisture.equilibrium
from woodlib.air.year import Year
Year.from_seasons(winter=(20, 30), summer=(25, 60)).driest()
woodlib.air.climates.year_from_climate("Chicago").dampest()
print(" ".join(sorted(name for name in sys.modules)))
"""


def test_no_plotting_no_widgets_no_upper_layer():
    loaded = subprocess.run(
        [sys.executable, "-c", _SCRIPT], check=True, capture_output=True, text=True, cwd=_ROOT
    ).stdout.split()
    assert "woodlib.moisture.equilibrium" in loaded
    heavy = {"matplotlib", "ipywidgets", "scipy", "pint", "psychrolib", "CoolProp"}
    upper = ("movement", "restraint", "construction", "setting_out", "figures", "study", "live", "handout", "lesson")
    assert not heavy & set(loaded)
    assert not [name for name in loaded if name.startswith(tuple(f"woodlib.{part}" for part in upper))]


def test_air_knows_nothing_of_moisture():
    script = (
        "import sys, woodlib.air.indoors, woodlib.air.weather_file, woodlib.air.hygrometer_log, woodlib.air.climates\n"
    )
    script += "print(any(name.startswith('woodlib.moisture') for name in sys.modules))"
    result = subprocess.run([sys.executable, "-c", script], check=True, capture_output=True, text=True, cwd=_ROOT)
    assert result.stdout.strip() == "False"
