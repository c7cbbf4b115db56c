"""Builds the site: records, tables, checks, pages, the site builder, and what is not Markdown."""

import shutil
import subprocess
import sys
from datetime import date
from pathlib import Path

from calculators.core.data import MissingTable
from scripts.records.checks.all import record_faults
from scripts.records.known_texts import KnownTexts
from scripts.records.load import BadRecords, Library, read_records
from scripts.records.noted_reads import FOLLOWED
from scripts.records.schema import write_schemas
from scripts.setup import paths
from scripts.setup.kept import code, throw_away_unused
from scripts.setup.say import Missing, say, step
from scripts.site.joined_scripts import put_scripts
from scripts.site.nothing_new import forget, sources, write_stamp
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
    before = sources(species, tables)
    with step("checking the records, making the tables"):
        library = checked(species, tables)
        write_schemas()
    forget(site)
    of = sources(species, tables)
    said = old_laws(library)
    for line in said:
        say(line)
    code()  # read once, before processes share the work that asks for it
    write_source(library, beside_records(species, tables))
    with step("building the site"):
        fresh = site.with_name(f"{site.name}-fresh")
        shutil.rmtree(fresh, ignore_errors=True)
        write_site(fresh)
        shutil.rmtree(site, ignore_errors=True)
        fresh.rename(site)
    if before.given == of.given and of == sources(species, tables):  # else changed meanwhile
        write_stamp(site, of, said)
    throw_away_unused()


def old_laws(library: Library) -> list[str]:
    """What to say of law lists whose text may be more than a year old, so that somebody reads anew."""
    old = [slug for slug, rule in library.rules.items() if rule.is_old(date.today())]
    if not old:
        return []
    return [f"  law lists whose text is over a year old or undated: {', '.join(sorted(old))}"]


def checked(species: Path = paths.SPECIES, tables: Path = paths.TABLES) -> Library:
    """The records, their tables made, and tried by the calculators.

    Raises ``BadRecords`` with every fault, also those of a record that is broken otherwise.
    """
    texts = KnownTexts.kept(str(species))
    reading = read_records(species, texts.document)
    texts.keep()
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


def beside_records(species: Path, tables: Path) -> str:
    """A hash of every source but the records of which is followed what a page reads of them."""
    folders = (species / kind for kind in FOLLOWED)
    followed = [place if place.is_dir() else place.with_suffix(".yml") for place in folders]
    return " ".join(sources(species, tables, followed))


def write_source(library: Library, beside: str) -> None:
    """Write the site's source: the pages, the browser's Python, the letters.

    ``beside`` is a hash of all that it follows from beside the followed records.
    """
    from scripts.pages.write import write  # the pages import the calculators
    from scripts.runtime.make_runtime import make_runtime
    from scripts.runtime.published_wheel import make_wheel
    from scripts.site.fonts import write_fonts

    runtime, wheel = make_runtime(), make_wheel()
    with step("writing the pages"):
        write(library, beside)
        shutil.copytree(
            runtime, paths.SOURCE / "runtime", ignore=shutil.ignore_patterns("made-from.txt")
        )
        shutil.copyfile(wheel, paths.SOURCE / "data" / wheel.name)
        write_fonts(paths.SOURCE / "assets" / "fonts")


def write_site(site: Path) -> None:
    """Make the site from its source. Raises ``BuildFailed`` or ``Missing``."""
    from scripts.site.frames import Frames
    from scripts.site.offline import write_offline_list
    from scripts.site.one_sheet import join_sheets
    from scripts.site.page_links import broken_links
    from scripts.site.ready_pages import put_contents, read_pages
    from scripts.site.theme import settled_theme

    pages = read_pages(paths.SOURCE)
    files = {
        path.relative_to(paths.SOURCE).as_posix()
        for path in paths.SOURCE.rglob("*")
        if path.is_file()
    }
    if broken := list(broken_links({name: page.links for name, page in pages.items()}, files)):
        raise BuildFailed("\n".join(broken))
    frames = Frames({name: page.headings for name, page in pages.items()})
    frames.make(run_builder)
    shutil.copytree(paths.SOURCE, site, ignore=shutil.ignore_patterns("*.md"))
    frames.write_beside(site)
    classes = put_contents(paths.SOURCE, site, put_scripts(site), frames)
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
