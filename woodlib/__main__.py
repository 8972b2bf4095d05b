"""The command line: ``python3 -m woodlib open``, ``test``, ``handout`` and the rest.

This file and ``woodlib/__init__.py`` keep to spellings that Python 3.6 reads, so that an old Python gets a sentence
and not a syntax error.
"""

import os
import subprocess
import sys

# The kit's matrices are small: threads that wait for each other cost more than they do, most of all on a busy machine.
# Read when NumPy is loaded, here and in the notebooks that are opened from here; what is set already stands.
for library in ("OPENBLAS", "OMP", "MKL"):
    os.environ.setdefault(library + "_NUM_THREADS", "1")

OLDEST = (3, 11)
NEWER = ("python3.14", "python3.13", "python3.12", "python3.11")


def old_python_sentence(version, executable, newer):
    """What to say to a Python that is too old; ``newer`` is the command of a newer one found here, or None."""
    found = "woodlib needs Python %d.%d or newer, and %s is Python %d.%d; "
    found = found % (OLDEST + (executable,) + tuple(version[:2]))
    if newer:
        return found + "run it with %s, which is on this computer already." % newer
    return found + "install a newer one from your system's packages or from python.org."


def starts(command):
    """Whether there is a command of this name and it runs."""
    try:
        return subprocess.call([command, "-c", ""], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) == 0
    except OSError:
        return False


def main(arguments=None):
    """Run one command; returns the exit code, 0 when all went well."""
    if sys.version_info < OLDEST:
        newer = next((name for name in NEWER if starts(name)), None)
        print(old_python_sentence(sys.version_info, sys.executable, newer), file=sys.stderr)
        return 1
    # Many small matrices: threads that wait for each other cost more than they bring. To be set before NumPy is loaded.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    for stream in (sys.stdout, sys.stderr):  # a screen that lacks a letter shows a question mark instead of failing
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    from .command_line import run

    return run(sys.argv[1:] if arguments is None else arguments)


if __name__ == "__main__":
    sys.exit(main())
