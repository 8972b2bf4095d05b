"""Kernels broadcast and take arrays that are worked out later and elsewhere: lazily, and to the same numbers."""

import dask.array as lazy
import numpy as np
import pytest

from woodlib.air.psychrometrics import saturation_pressure_pa
from woodlib.air.rooms import air_of_constants, all_kinds
from woodlib.air.sorption import sorption_percent
from woodlib.moisture.diffusivity import siau_m2_s
from woodlib.moisture.hysteresis import swing_factor
from woodlib.movement.coefficients import movement_strain
from woodlib.movement.wood import Wood, width_strain
from woodlib.restraint.closed_forms import transverse_modulus_pa

ASH, ROOM, X = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078), all_kinds()[0], np.linspace(0.0, 1.0, 24)
RINGS, DRY, DAMP = 1.5 * X, 4.0 + 2.0 * X, 8.0 + 5.0 * X
KERNELS = {
    "sorption": (lambda rh: sorption_percent(21.0, rh), 5.0 + 90.0 * X),
    "saturation": (saturation_pressure_pa.kernel, 60.0 * X - 20.0),
    "room": (lambda c, pa: air_of_constants(c, pa, ROOM, 20.0, 3.0, 4.0, 1.0), 40.0 * X - 10.0, 300.0 + 1500.0 * X),
    "branches": (swing_factor, DRY, DAMP),
    "diffusion": (lambda mc: siau_m2_s.kernel(mc, 20.0, 0.6), 5.0 + 15.0 * X),
    "axis": (lambda a, b: movement_strain(0.00274, 0.078, a, b), DRY, 3.0 + 30.0 * X),
    "width": (lambda rings, a, b: width_strain(ASH, rings, 0.0, a, b), RINGS, DRY, DAMP),
    "modulus": (lambda rings: transverse_modulus_pa(1e9, 1.7e9, 0.3e9, 0.4, rings), RINGS),
}


@pytest.mark.parametrize("name", KERNELS)
def test_a_kernel_takes_arrays_of_dask(name):
    kernel, *arrays = KERNELS[name]
    plain, later = kernel(*arrays), kernel(*(lazy.from_array(array, chunks=16) for array in arrays))
    for now, then in zip(*((each if isinstance(each, tuple) else (each,)) for each in (plain, later)), strict=True):
        assert isinstance(then, lazy.Array) and then.chunks == ((16, 8),)
        assert np.array_equal(now, then.compute())
