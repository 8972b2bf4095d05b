"""Setting out: from finished sizes to blanks, boards, cuts, dowels, holes, weight and the shop drawing.

Lengths are exact fractions of a metre until they are marked on wood; there each is rounded once, and the rounding is
shown. ``kernels`` holds the smooth numbers, ``exact`` the one place where lengths are rounded, ``practice`` the shop's
allowances; then one module per step, in the order of the job, and ``plan`` puts them together for a brief.
"""
