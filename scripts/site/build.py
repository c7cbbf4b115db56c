"""Builds the site: records, tables, checks, pages, the site builder, and what is not Markdown."""

import shutil
import subprocess
import sys
from datetime import date
from pathlib import Path

from calculators.core.data import MissingTable
from scripts.records.checks.all import record_faults
from scripts.records.load import BadRecords, Library, read_records
from scripts.records.schema import write_schemas
from scripts.setup import paths
from scripts.setup.kept import code, throw_away_unused
from scripts.setup.say import Missing, say, step
from scripts.site.joined_scripts import put_scripts
from scripts.tables.make import TablesInUse, write_tables


class BuildFailed(Exception):
    """The site builder refused; its words are the message."""


def build(
    site: Path = paths.SITE, species: Path = paths.SPECIES, tables: Path = paths.TABLES
) -> None:
    """Build the whole site into ``site``; what was there stays until the new one is whole.

    Other records than the project's need a folder of their own for their tables; the calculators go on
    with the project's. Raises ``BadRecords``, ``BuildFailed``, ``Missing`` or ``TablesInUse``.
    """
    with step("checking the records, making the tables"):
        library = checked(species, tables)
        write_schemas()
    say_old_laws(library)
    code()  # read once, before processes share the work that asks for it
    write_source(library)
    with step("building the site"):
        fresh = site.with_name(f"{site.name}-fresh")
        shutil.rmtree(fresh, ignore_errors=True)
        write_site(fresh)
        shutil.rmtree(site, ignore_errors=True)
        fresh.rename(site)
    throw_away_unused()


def say_old_laws(library: Library) -> None:
    """Say which law lists rest on a text that may lie more than a year back, so that somebody reads anew."""
    old = [slug for slug, rule in library.rules.items() if rule.is_old(date.today())]
    if old:
        say(f"  law lists whose text is over a year old or undated: {', '.join(sorted(old))}")


def checked(species: Path = paths.SPECIES, tables: Path = paths.TABLES) -> Library:
    """The records, their tables made, and tried by the calculators.

    Raises ``BadRecords`` with every fault, also those of a record that is broken otherwise.
    """
    reading = read_records(species)
    faults = [*reading.faults, *record_faults(reading)]
    settled = not faults
    if settled:
        write_tables(reading.library, tables)
    try:
        # The calculators read the tables as they are imported, and must not be before.
        from scripts.records.with_calculators.check import calculation_faults

        faults += calculation_faults(reading, settled=settled)
    except MissingTable:
        if settled:
            raise
    if faults:
        raise BadRecords(faults)
    return reading.library


def write_source(library: Library) -> None:
    """Write the site's source: the pages, the browser's Python, the letters."""
    from scripts.pages.write import SOURCE, write  # the pages import the calculators
    from scripts.runtime.make_runtime import make_runtime
    from scripts.runtime.published_wheel import make_wheel
    from scripts.site.fonts import write_fonts

    runtime, wheel = make_runtime(), make_wheel()
    with step("writing the pages"):
        write(library)
        shutil.copytree(runtime, SOURCE / "runtime", ignore=shutil.ignore_patterns("made-from.txt"))
        shutil.copyfile(wheel, SOURCE / "data" / wheel.name)
        write_fonts(SOURCE / "assets" / "fonts")


def write_site(site: Path) -> None:
    """Make the site from its source. Raises ``BuildFailed`` or ``Missing``."""
    from scripts.pages.write import SOURCE
    from scripts.site.offline import write_offline_list
    from scripts.site.one_sheet import join_sheets
    from scripts.site.page_links import broken_links
    from scripts.site.ready_pages import BUILDERS_SETTINGS, put_contents, write_headings
    from scripts.site.theme import settled_theme

    pages = write_headings(SOURCE)
    files = {path.relative_to(SOURCE).as_posix() for path in SOURCE.rglob("*") if path.is_file()}
    if broken := list(broken_links(pages, files)):
        raise BuildFailed("\n".join(broken))
    run_builder(BUILDERS_SETTINGS, site)
    shutil.copytree(SOURCE, site, ignore=shutil.ignore_patterns("*.md"), dirs_exist_ok=True)
    classes = put_contents(SOURCE, site, put_scripts(site))
    join_sheets(site, settled_theme(site, classes))
    write_offline_list(site)


def run_builder(settings: Path, target: Path) -> None:
    """The one place that knows which site builder there is.

    Raises ``BuildFailed`` with its output.
    """
    options = ("--strict", "--quiet", "-f", str(settings), "-d", str(target.resolve()))
    command = [sys.executable, "-m", "mkdocs", "build", *options]
    done = subprocess.run(command, cwd=paths.ROOT, capture_output=True, text=True)
    if done.returncode:
        raise BuildFailed(f"{done.stdout}{done.stderr}".strip())


__all__ = ["BadRecords", "BuildFailed", "Missing", "TablesInUse", "build"]
