#!/usr/bin/env python3
"""Set everything up, build the site, serve it on this machine and print the address.

python3 scripts/serve.py [--build-only | --watch] [--port N]
"""

import sys
from pathlib import Path

if __package__ in (None, ""):
    sys.path[0] = str(
        Path(__file__).resolve().parents[1]
    )  # not scripts/: its test.py would hide Python's

from scripts.setup.environment import enter
from scripts.setup.say import Missing, stop

try:
    enter(("build",), "scripts.serve")
except Missing as missing:
    stop(str(missing))

import argparse

from scripts.setup.paths import SITE
from scripts.setup.say import say
from scripts.site.build import BadRecords, BuildFailed, TablesInUse, build
from scripts.site.server import serve


def main() -> None:
    """Build, then serve until interrupted."""
    options = argparse.ArgumentParser(prog="serve.py", description=__doc__.splitlines()[0])
    options.add_argument("--build-only", action="store_true", help="build site/ and stop")
    options.add_argument("--into", type=Path, default=SITE, help="the folder to build; site/")
    options.add_argument(
        "--watch", action="store_true", help="show every change to records, prose, style, templates"
    )
    options.add_argument("--port", type=int, default=8000, help="the port to serve on; 8000")
    asked = options.parse_args()
    if not 0 <= asked.port <= 65535:
        options.error(f"--port: {asked.port} is no port; allowed is 0 to 65535")
    try:
        if asked.watch:
            from scripts.site.watch import serve_and_watch

            serve_and_watch(asked.port)
        build(asked.into)
        say(f"{asked.into.name}/ is ready: any static host can serve it.")
        if not asked.build_only:
            serve(asked.into, asked.port)
    except BadRecords as bad:
        stop(f"the records do not hold\n{bad}")
    except (BuildFailed, Missing, TablesInUse) as wrong:
        stop(str(wrong))
    except KeyboardInterrupt:
        say("stopped.")


if __name__ == "__main__":
    main()
