"""What a year does to the stress in held wood: changes of moisture relax it, on every leg.

ds = E R de/(1 + phi) - m s |dw|: a change of moisture dw makes a misfit strain de, a share phi of which creeps away at
once, and every point of moisture change, either way, wears the standing stress down by the rate m. Speed does not
matter, only how far the moisture goes. Why not one leg: a panel glued dry is pushed together in the damp season, takes
a set, and is pulled apart in the next dry one.

The size of m rests on abstracts: one cycle of moisture adds about 5 times the elastic strain, several about 10 times
(spruce across the grain; Toratti & Svensson 2000, Svensson & Toratti 2002). Ranges are assumptions; see the data table.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from .assumptions import assumption


def relaxation_factor(change_percent, rate_per_percent, delayed_share):
    """Share of the elastic stress left after one steady drying or wetting, lambda.

    lambda = (1 - exp(-m D)) / (m D (1 + phi)); all arguments broadcast.

    >>> round(float(relaxation_factor(5.0, 0.47, 0.4)), 3)
    0.275
    """
    worn = np.asarray(rate_per_percent * np.abs(change_percent), float)
    share = -np.expm1(-np.maximum(worn, 1e-12)) / np.maximum(worn, 1e-12)
    return share / (1.0 + delayed_share)


def relaxed_path_pa(mc_percent, misfit_strain, stiffness_pa, rate_per_percent, delayed_share):
    """Stress along a path of moisture, exact between the points given.

    Parameters
    ----------
    mc_percent : array (n, ...)
        Moisture content along the path, percent; the first is at glue-up, where there is no stress.
    misfit_strain : array (n, ...)
        Free strain of the panel less that of the strip since glue-up (negative when drier).
    stiffness_pa, rate_per_percent, delayed_share : float or array
        E R, m and phi; broadcast with each other and with what follows the first axis of the path to a shape S.

    Returns
    -------
    array (n, *S)
        Tension positive, Pa.

    Examples
    --------
    >>> stress = relaxed_path_pa(np.array([7, 12, 7.0]), np.array([0, 0.5, 0.0]) * 20.7, 1.0, 0.47, 0.4)
    >>> [round(float(s), 2) for s in stress]
    [0.0, -2.85, 2.57]

    Notes
    -----
    On a leg with moisture change d: s -> s exp(-m|d|) - (E R de/(m|d|(1 + phi))) (1 - exp(-m|d|)). A leg on which the
    strain per percent varies is taken at its mean.
    """
    moisture, strain = np.asarray(mc_percent, float), np.asarray(misfit_strain, float)
    rate = np.asarray(rate_per_percent, float)
    changes, steps = np.abs(np.diff(moisture, axis=0)), np.diff(strain, axis=0)
    shape = np.broadcast_shapes(changes.shape[1:], steps.shape[1:], *map(np.shape, (stiffness_pa, rate, delayed_share)))
    path = np.zeros((len(moisture), *shape))
    for leg, (change, step) in enumerate(zip(changes, steps, strict=True)):
        pushed = stiffness_pa * step * relaxation_factor(change, rate, delayed_share)
        path[leg + 1] = path[leg] * np.exp(-rate * change) - pushed
    return path


def gathered_path(mc_percent, misfit_strain, path_pa, stiffness_pa, rate_per_percent) -> np.ndarray:
    """Strain gathered in tension along a path of stress, counted from where the stress crosses zero; as ``path_pa``.

    On a drying from a push s0 < 0 the stress crosses zero after ln(1 + |s0| m/(E R C (1 + phi)^-1))/m points; a leg that
    ends pushed has nothing.

    >>> mc, strain = np.array([7, 12, 7.0]), np.array([0, 0.5, 0.0])
    >>> path = relaxed_path_pa(mc, strain, 1.0, 0.47, 0.0)
    >>> [round(float(part), 3) for part in gathered_path(mc, strain, path, 1.0, 0.47)]
    [0.0, 0.0, 0.363]
    """
    moisture, strain = np.asarray(mc_percent, float), np.asarray(misfit_strain, float)
    gathered = np.zeros_like(path_pa)
    for leg in range(len(moisture) - 1):
        change, shrink = np.abs(moisture[leg + 1] - moisture[leg]), strain[leg] - strain[leg + 1]
        worn = np.maximum(rate_per_percent * change, 1e-12)
        full = np.maximum(stiffness_pa * shrink / worn, 1e-12)
        back = np.log1p(np.maximum(-path_pa[leg], 0.0) / full) / worn
        fresh = np.maximum(shrink, 0.0) * np.clip(1.0 - back, 0.0, 1.0)
        gathered[leg + 1] = np.where(path_pa[leg + 1] > 0.0, gathered[leg] + np.where(shrink > 0.0, fresh, shrink), 0.0)
    return np.maximum(gathered, 0.0)


def turning_points(mc_percent) -> np.ndarray:
    """Places along a path where moisture turns, with both ends; between them the path only rises or only falls.

    >>> turning_points([9.5, 11, 12, 12, 8, 7, 9]).tolist()
    [0, 3, 5, 6]
    """
    moisture = np.asarray(mc_percent, float)
    moving = np.flatnonzero(np.diff(moisture) != 0.0)
    signs = np.sign(np.diff(moisture))[moving]
    turns = moving[1:][signs[1:] != signs[:-1]]
    return np.unique(np.concatenate([[0], turns, [moisture.size - 1]]))


def several_years(glue_up_percent: float, year_percent, years: int) -> np.ndarray:
    """Path of moisture: glue-up, then the same year again and again; only its turning points.

    >>> several_years(9.5, [12, 7], 2).tolist()
    [9.5, 12.0, 7.0, 12.0, 7.0]
    """
    path = np.concatenate([[glue_up_percent], np.tile(np.asarray(year_percent, float), years)])
    return path[turning_points(path)]


@dataclass(frozen=True)
class SeasonStress:
    """Tension across the grain through the years, Pa.

    ``elastic_pa``: nothing relaxes and no set is taken. ``bound_pa``: every damp season's set is kept and the drying
    after it is elastic; the relaxed stress can never exceed it. ``relaxed_pa`` with its range: what is expected.
    ``gathered`` with its range: free strain that falls into times of tension.
    """

    mc_percent: np.ndarray
    path_pa: np.ndarray
    elastic_pa: float
    bound_pa: float
    relaxed_pa: float
    relaxed_low_pa: float
    relaxed_high_pa: float
    settled_pa: float
    peak_mc_percent: float
    gathered: float
    gathered_range: tuple[float, float]
    remarks: tuple[str, ...] = ()


def season_stress(mc_percent, misfit_strain, stiffness_pa: float) -> SeasonStress:
    """Peak tension over the years: elastic, bound, and relaxed with its range.

    Parameters: the path (percent) and the misfit strain along it as in ``relaxed_path_pa``; ``stiffness_pa`` E R.
    The range runs over the assumed limits of m and phi.

    >>> path = several_years(7.0, [12, 7], 8)
    >>> result = season_stress(path, 0.00264 * (path - 7.0), 0.744 * 1056e6)
    >>> [round(x / 1e6, 1) for x in (result.elastic_pa, result.relaxed_pa, result.bound_pa)]
    [0.0, 2.6, 10.4]
    """
    rate, share = assumption("relaxation_rate"), assumption("delayed_share")
    moisture, strain = np.asarray(mc_percent, float), np.asarray(misfit_strain, float)
    rates = np.array([rate.middle, rate.high, rate.low])
    shares = np.array([share.middle, share.high, share.low])
    paths = relaxed_path_pa(moisture, strain, stiffness_pa, rates, shares)
    highest = np.maximum(paths.max(axis=0), 0.0)
    from_dampest = float(np.max(np.maximum.accumulate(strain) - strain))
    last_year = paths[-3:, 0] if moisture.size > 3 else paths[:, 0]
    at_peak = int(np.argmax(paths[:, 0]))
    return SeasonStress(
        moisture,
        paths[:, 0],
        float(stiffness_pa * max(0.0, -strain.min())),
        float(stiffness_pa * from_dampest),
        float(highest[0]),
        float(highest[1]),
        float(highest[2]),
        float(max(last_year.max(), 0.0)),
        float(moisture[at_peak]),
        *_gathered(moisture, strain, paths * (1.0 + shares), stiffness_pa, rates),
        _set_remark(strain),
    )


def _gathered(moisture, strain, paths, stiffness_pa: float, rates) -> tuple[float, tuple[float, float]]:
    found = gathered_path(moisture[:, None], strain[:, None], paths, stiffness_pa, rates).max(axis=0)
    return float(found[0]), (float(found[2]), float(found[1]))


def _set_remark(strain: np.ndarray) -> tuple[str, ...]:
    limit = assumption("compression_set_strain")
    if strain.max() <= limit.low:
        return ()
    return (
        f"In the damp season the panel is pushed together by up to {100 * strain.max():.1f} % of its width; beyond "
        f"{100 * limit.low:.1f} % wood takes a permanent set, and the next dry season pulls it apart.",
    )
