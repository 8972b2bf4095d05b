"""The usual ways to end, frame or fix a solid panel, each judged by the same measure.

Read in this order: ``piece`` (what is built), ``held`` (how much a glued border holds back), ``travel`` (smooth
numbers: how far the width goes), one module per way to build (smooth numbers, rules for cuts, words), ``verdict``
(every decision: larger-of, thresholds, rounding), ``index`` (all ways, side by side).
"""
