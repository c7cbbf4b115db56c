#!/usr/bin/env python3
"""Set everything up, build the site, serve it on this machine and print the address.

python3 scripts/serve.py [--build-only | --watch] [--port N]
"""

import os
import sys

if __package__ in (None, ""):  # in place of scripts/, whose test.py would hide Python's own
    sys.path[0] = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))

from scripts.setup.python_version import check_python_version

check_python_version()

from scripts.setup.enter import enter_or_stop, interrupt_told

enter_or_stop(("build",), "scripts.serve", "scripts.site.nothing_new:sources_in_octets")

if __name__ == "__main__":
    with interrupt_told():
        from scripts.site.serve_command import main

        main(__doc__)
    sys.stdout.flush()
    # Else Python goes through all that a build holds as it ends, for a tenth of a second.
    os._exit(0)
