"""A drawing for every way to build: plan and section from the numbers of its verdict, as marks.

Read ``sheet`` (lay-out, scales, wood), ``plans`` (the piece from above), ``joints`` and ``edges`` (sections), then
``drawing`` (which way is drawn how). Every drawing keeps its structure whatever its numbers, so that it can be frozen.
"""
