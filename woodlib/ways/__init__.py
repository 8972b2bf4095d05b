"""The usual ways to end, frame or fix a solid panel: each in a module of its own, all judged by the same measure.

Read in this order: ``piece`` (what is built), ``travel`` (how far the width goes), ``way`` (what a way to build has to
say, as a record), one way such as ``battens``, ``judge`` (from its numbers to a step of risk and sentences), ``verdict``
(the same in plain words), ``index`` (all ways side by side). ``registry`` finds them; ``made`` and ``given`` are what
their parts are made of, ``drawing`` the sheet that each is drawn on.
"""
