"""What a pin meter's reading means in cold or warm wood.

A pin meter measures the resistance of wood, which falls as wood gets warmer. A meter that does not correct for that reads
too high in warm wood and too low in cold.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from ..door import Limits, door

READING = Limits(1.0, 60.0, "%", "write what the meter shows, for example 9.1", "percent", share="mc")
METERED_C = Limits(-20.0, 45.0, "degC", 'write the temperature of the wood, for example "50 degF"')


@door(reading_percent=READING, wood_c=METERED_C)
def metered_percent(reading_percent: Any, wood_c: Any) -> Any:
    """Moisture content from what a pin meter shows in wood of a temperature.

    reading_percent: % MC as a meter shows it that is calibrated at 20 degC and does not correct by itself; wood_c: degC, -20
    to 45. Returns % MC, broadcast shape; the reading itself at 20 degC. Raises InputError.

    >>> [round(float(mc), 1) for mc in metered_percent(12.0, [0.0, 20.0, 30.0])]
    [14.0, 12.0, 11.1]

    With x = wood_c + 2.8: (reading + 0.567 - 0.0260 x + 0.000051 x^2) / (0.881 * 1.0056^x). Pfaff and Garrahan 1986, Forest
    Products Journal, from memory; what speaks for the numbers is that they give the reading back at 20 degC to 0.01, and a
    point per 10 K about it as the rule of the trade has it. The species is not in it: a meter set to another wood can be 1
    to 2 points off (from memory), which belongs into its error.
    """
    x = wood_c + 2.8
    return np.maximum((reading_percent + 0.567 - 0.0260 * x + 0.000051 * x**2) / (0.881 * 1.0056**x), 0.0)
