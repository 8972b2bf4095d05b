"""What holds for every test: no window is opened, and properties are searched the same way on every machine.

Hypothesis measures no time here, so a slow or busy machine cannot turn a right answer into a failure. In continuous
integration (``CI`` set) its search starts from the same place in every run; at a desk it looks somewhere new each time.
"""

from __future__ import annotations

import os

from hypothesis import HealthCheck, settings

os.environ["MPLBACKEND"] = "Agg"

settings.register_profile("desk", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.register_profile("ci", settings.get_profile("desk"), derandomize=True, database=None)
settings.load_profile("ci" if os.environ.get("CI") else "desk")
