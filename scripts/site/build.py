"""Builds the site: records, tables, checks, pages, the site builder, and what is not Markdown."""

import subprocess
import sys
from collections.abc import Callable
from datetime import date
from pathlib import Path

from calculators.core.data import MissingTable
from scripts.records.cell_digests import cells_of_texts
from scripts.records.checks.all import record_faults
from scripts.records.kept_files import KeptFiles
from scripts.records.lines import Document, document_of
from scripts.records.load import BadRecords, Library, read_records
from scripts.records.noted_reads import FOLLOWED
from scripts.records.parsed_texts import ParsedTexts
from scripts.records.schema import write_schemas
from scripts.setup import paths
from scripts.setup.file_hash import names_below
from scripts.setup.kept import code, throw_away_unused
from scripts.setup.new_folder import NewFolder, made_anew, set_aside
from scripts.setup.rubbish import rubbish_seldom_sought
from scripts.setup.say import Missing, say, step
from scripts.site.joined_scripts import put_scripts
from scripts.site.nothing_new import forget, sources, write_stamp
from scripts.tables.make import TablesInUse, texts_of_tables, write_tables


class BuildFailed(Exception):
    """The site builder refused; its words are the message."""


@rubbish_seldom_sought()
def build(
    site: Path = paths.SITE, species: Path = paths.SPECIES, tables: Path = paths.TABLES
) -> None:
    """Build the whole site into ``site``; what was there stays until the new one is whole.

    Other records than the project's need a folder of their own for their tables; the calculators go on
    with the project's. Raises ``BadRecords``, ``BuildFailed``, ``Missing`` or ``TablesInUse``.
    """
    before = sources(species, tables)
    with step("checking the records, making the tables"):
        known = checked_once(species, tables)
        write_schemas()
    forget(site)
    of = sources(species, tables)
    said = old_laws(known.library)
    for line in said:
        say(line)
    code()  # read once, before processes share the work that asks for it
    write_source(known.beside_also(of.tables))
    del known  # the records, which nothing that follows needs
    with step("building the site"):
        fresh = site.with_name(f"{site.name}-fresh")
        with made_anew(fresh, paths.SITE_BEFORE) as folder:
            write_site(folder)
        set_aside(site, paths.SITE_BEFORE)
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


def checked_once(species: Path, tables: Path) -> KeptFiles:
    """As ``checked``, with each text parsed once, as long as it stays the same."""
    texts = ParsedTexts.kept(str(species))
    known = checked(species, tables, texts.document)
    texts.keep()
    return known


def checked(
    species: Path = paths.SPECIES,
    tables: Path = paths.TABLES,
    parsed: Callable[[str], Document] = document_of,
) -> KeptFiles:
    """The records, their tables made, and tried by the calculators; with what is kept of their files.

    ``parsed`` makes a document of a text.

    Raises ``BadRecords`` with every fault, also those of a record that is broken otherwise.
    """
    reading = read_records(species, parsed)
    faults = [*reading.faults, *record_faults(reading)]
    settled = not faults
    cells = cells_of_texts(reading) if settled else {}
    known = KeptFiles(reading.library, beside_records(species, tables), cells)
    if settled:
        makers = texts_of_tables(known.library)
        write_tables({name: known.text(name, make) for name, make in makers.items()}, tables)
    try:
        # The calculators read the tables as they are imported, and must not be before.
        from scripts.records.with_calculators.check import calculation_faults

        faults += calculation_faults(reading, settled=settled)
    except MissingTable:
        if settled:
            raise
    if faults:
        raise BadRecords(faults)
    return known


def beside_records(species: Path, tables: Path) -> str:
    """A hash of every source but the tables and the records of which is followed what is read of them."""
    folders = (species / kind for kind in FOLLOWED)
    followed = [place if place.is_dir() else place.with_suffix(".yml") for place in folders]
    return sources(species, tables, followed).given


def write_source(known: KeptFiles) -> None:
    """Write the site's source: the pages, the browser's Python, the letters."""
    from scripts.pages.write import write  # the pages import the calculators
    from scripts.runtime.make_runtime import make_runtime
    from scripts.runtime.published_wheel import make_wheel
    from scripts.site.fonts import write_fonts

    runtime, wheel = make_runtime(), make_wheel()
    set_aside(paths.SOURCE, paths.SOURCE_BEFORE)
    with (
        step("writing the pages"),
        made_anew(paths.SOURCE, paths.SOURCE_BEFORE) as source,
    ):
        write(known, source)
        source.copy_all(runtime, ("made-from.txt",), "runtime")
        source.copy(str(wheel), str(source.path / "data" / wheel.name))
        write_fonts(source.path / "assets" / "fonts")


def write_site(folder: NewFolder) -> None:
    """Make the site from its source in a folder. Raises ``BuildFailed`` or ``Missing``."""
    from scripts.site.frames import Frames
    from scripts.site.offline import write_offline_list
    from scripts.site.one_sheet import join_sheets
    from scripts.site.page_links import broken_links
    from scripts.site.ready_pages import put_contents, read_pages
    from scripts.site.theme import settled_theme

    pages = read_pages(paths.SOURCE)
    files = set(names_below(paths.SOURCE))
    if broken := list(broken_links({name: page.links for name, page in pages.items()}, files)):
        raise BuildFailed("\n".join(broken))
    frames = Frames({name: page.headings for name, page in pages.items()})
    frames.make(run_builder)
    site = folder.path
    folder.copy_all(paths.SOURCE, ("*.md",))
    frames.write_beside(site)
    classes = put_contents(paths.SOURCE, folder, put_scripts(site), frames, pages)
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
