"""woodlib: how far wood moves, what happens when it is held, and how to build with it.

Public names are looked up on first use, so that ``import woodlib`` stays quick. Like ``__main__``, this file keeps to
spellings that Python 3.6 reads.
"""

from importlib import import_module

__version__ = "0.1.0"

# Public name -> module that defines it; one line each, in the order of the job.
_PUBLIC = {
    "WoodlibError": "errors",
    "InputError": "errors",
    "MissingDataError": "errors",
    "registry": "units",
    "Quantity": "units",
    "read_length": "units",
    "metres": "units",
    "exact_metres": "units",
    "read_quantity": "units",
    "inch_fraction": "units",
    "millimetres": "units",
    "both": "units",
    "length_range": "units",
    "Brief": "brief",
    "read_brief": "brief",
    "write_template": "brief",
    "Value": "species",
    "Species": "species",
    "find_species": "species",
    "all_species": "species",
    "read_own_species": "species",
    "estimates_used": "species",
    "Year": "air.year",
    "all_climates": "air.climates",
    "year_from_climate": "air.climates",
    "read_hygrometer_log": "air.hygrometer_log",
    "read_weather_file": "air.weather_file",
    "indoors": "air.indoors",
    "seasonal_moisture_gain_g_m3": "air.indoors",
    "emc_percent": "moisture.equilibrium",
    "rh_percent_for_emc": "moisture.equilibrium",
    "hysteresis_band": "moisture.equilibrium",
    "air_for_meter_reading": "moisture.equilibrium",
    "steady_air": "moisture.drive",
    "air_log": "moisture.drive",
    "air_of_year": "moisture.drive",
    "find_finish": "moisture.finishes",
    "finish_names": "moisture.finishes",
    "Stock": "moisture.stock",
    "follow": "moisture.following",
    "resting": "moisture.resting",
    "storage": "moisture.resting",
    "year_inside": "moisture.swing",
    "coat_by_coat": "moisture.swing",
    "swing_reach": "moisture.swing",
    "flattening": "moisture.readiness",
    "day_to_flatten": "moisture.readiness",
    "glue_up": "movement.glue_up",
    "Board": "movement.board",
    "Panel": "movement.panel",
    "PanelBoard": "movement.panel",
    "Movement": "movement.spread",
    "Doubts": "movement.spread",
    "width_movement": "movement.spread",
    "movement_through_year": "movement.through_year",
    "monthly_moisture": "movement.months",
    "movement_strain": "movement.strain",
    "held_panel": "restraint.held",
    "HeldPanel": "restraint.held",
    "slot_plan": "restraint.fasteners",
    "elastic_constants": "restraint.elastic",
    "Piece": "ways.piece",
    "Allowances": "ways.piece",
    "Verdict": "ways.verdict",
    "compare": "ways.index",
    "verdict_for": "ways.index",
    "ways_for": "ways.registry",
    "full_restraint": "ways.held",
    "plane_field": "ways.held",
    "one_line_restraint": "ways.held",
    "centred": "units.exact",
    "ShopPractice": "setting_out.practice",
    "grain_run": "setting_out.continuity",
    "blank_for": "setting_out.blank",
    "StockBoard": "setting_out.boards",
    "boards_for": "setting_out.boards",
    "Step": "ways.steps",
    "cut_order": "setting_out.order",
    "LaterCut": "setting_out.later_cuts",
    "joint_row": "setting_out.joints",
    "hole_pair": "setting_out.holes",
    "markings": "setting_out.holes",
    "hole_fit": "setting_out.holes",
    "grain_slots": "setting_out.slots",
    "weight_of": "setting_out.weight",
    "glue_lines": "setting_out.glue",
    "board_feet": "setting_out.buying",
    "to_buy": "setting_out.buying",
    "set_out": "setting_out.plan",
    "cut_rows": "setting_out.lists",
    "hole_rows": "setting_out.lists",
    "write_csv": "setting_out.lists",
    "find_study": "studies",
    "show": "live",
    "sheets": "setting_out.sheets",
}

__all__ = ["__version__", *_PUBLIC]


def __getattr__(name: str):
    if name in _PUBLIC:
        from .errors import netted

        value = netted(getattr(import_module(f".{_PUBLIC[name]}", __name__), name))
        globals()[name] = value
        return value
    raise AttributeError(f"woodlib has no name {name!r}; the public names are: {', '.join(sorted(_PUBLIC))}.")


def __dir__():
    return sorted(__all__)
