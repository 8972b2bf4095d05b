"""Held movement: what happens when something stops a panel from moving across its grain.

Read in this order: ``elastic`` (how stiff a species is), ``closed_forms``, ``series``, ``layers``, ``fasteners`` and
``mitre`` (what fits on a blackboard), ``lobatto``, ``field`` and ``field_readings`` (the plane field), ``relaxation``
(what a year does to the stress), ``measures`` and ``fracture`` (what the wood can take), ``chance`` (how often it
cracks), ``held`` (one door to all of it).
"""
