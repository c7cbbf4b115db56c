"""The command that builds and serves the book, once it is inside the project's environment."""

import argparse
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NoReturn

from scripts.setup.enter import found_out
from scripts.setup.paths import SITE, SPECIES, TABLES
from scripts.setup.rubbish import rubbish_seldom_sought
from scripts.setup.say import Missing, say, stop
from scripts.site.making import making_begun
from scripts.site.nothing_new import Sources, said_of_unchanged, sources, sources_from_octets


def main(description: str) -> None:
    """Build, then serve until interrupted. ``description`` is what the help says first."""
    asked = options(description)
    seen = found_out()
    try:
        if not asked.build_only:
            from scripts.site.server import check_port

            check_port(asked.port)
        if asked.watch:
            watch(asked.port)
        renew(asked.into, now=sources_from_octets(seen))
        say(f"{asked.into.name}/ is ready: any static host can serve it.")
        if not asked.build_only:
            from scripts.site.compressing_server import CompressingHandler
            from scripts.site.server import serve

            serve(asked.into, asked.port, CompressingHandler)
    except Missing as wrong:
        stop(str(wrong))
    except KeyboardInterrupt:
        say("stopped.")


def renew(
    site: Path, species: Path = SPECIES, tables: Path = TABLES, now: Sources | None = None
) -> None:
    """Build a site, or say that it stands as it would be built. ``now``: the sources, where somebody has
    looked at them already. Raises ``Missing``.
    """
    now = now or sources(species, tables)
    said = said_of_unchanged(site, now)
    if said is None:
        with rubbish_seldom_sought(), making_begun(site, now) as making, told_faults():
            from scripts.site.build import build  # which takes longer than the look before

            build(site, species, tables, now, making)
        return
    say("· nothing has changed since the last build")
    for line in said:
        say(line)


def watch(port: int) -> NoReturn:
    """Build, serve, and follow every change until interrupted. Raises ``Missing``."""
    with told_faults():
        from scripts.site.watch import serve_and_watch

        serve_and_watch(port)


@contextmanager
def told_faults() -> Iterator[None]:
    """Say in words what is wrong with the records or the pages, and end. Raises ``SystemExit``."""
    from scripts.site.build import BadRecords, BuildFailed, TablesInUse

    try:
        yield
    except BadRecords as bad:
        stop(f"the records do not hold\n{bad}")
    except (BuildFailed, TablesInUse) as wrong:
        stop(str(wrong))


def options(description: str) -> argparse.Namespace:
    """The words after the command; ends with a line where one is wrong."""
    parser = argparse.ArgumentParser(prog="serve.py", description=description.splitlines()[0])
    parser.add_argument("--build-only", action="store_true", help="build site/ and stop")
    parser.add_argument("--into", type=Path, default=SITE, help="the folder to build; site/")
    parser.add_argument(
        "--watch", action="store_true", help="show every change to records, prose, style, templates"
    )
    parser.add_argument("--port", type=int, default=8000, help="the port to serve on; 8000")
    asked = parser.parse_args()
    if not 0 <= asked.port <= 65535:
        parser.error(f"--port: {asked.port} is no port; allowed is 0 to 65535")
    return asked
