#!/usr/bin/env python3
"""Takes a picture of each type of page, on a phone and on a desktop, in light and in dark.

python3 scripts/pictures.py [WORD ...]    only of pages whose name holds one of the words
"""

import os
import sys

if __package__ in (None, ""):  # in place of scripts/, whose test.py would hide Python's own
    sys.path[0] = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))

from scripts.setup.python_version import check_python_version

check_python_version()

from scripts.setup.enter import enter_or_stop

enter_or_stop(("build", "test"), "scripts.pictures")

from scripts.site.page_pictures import take_pictures

if __name__ == "__main__":
    take_pictures(sys.argv[1:])
