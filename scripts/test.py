#!/usr/bin/env python3
"""Set everything up and run every test, the browser's included. Words after it go to pytest.

python3 scripts/test.py [--thorough] [--engines] [pytest's options]

``--thorough`` draws every example that a property asks for; without it a sample of them is drawn.
``--engines`` also walks the core path in Chromium, Firefox and WebKit.
"""

import os
import sys

if __package__ in (None, ""):  # in place of scripts/, whose test.py would hide Python's own
    sys.path[0] = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))

from scripts.setup.python_version import check_python_version

check_python_version()

from scripts.setup.enter import enter_or_stop

enter_or_stop(("build", "test"), "scripts.test")

from scripts.setup.test_command import main

if __name__ == "__main__":
    raise SystemExit(main())
