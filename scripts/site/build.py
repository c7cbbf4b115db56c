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
from scripts.records.parsed_texts import ParsedTexts
from scripts.records.schema import write_schemas
from scripts.setup import paths
from scripts.setup.file_hash import names_below
from scripts.setup.kept import code, throw_away_unused
from scripts.setup.new_folder import NewFolder, made_anew, set_aside
from scripts.setup.rubbish import rubbish_seldom_sought
from scripts.setup.say import Missing, say, step
from scripts.site.joined_scripts import put_scripts
from scripts.site.large_files import is_large, large_files_begun
from scripts.site.nothing_new import Sources, forget, hash_of_tables, sources, write_stamp
from scripts.tables.make import TablesInUse, texts_of_tables, write_tables


class BuildFailed(Exception):
    """The site builder refused; its words are the message."""


@rubbish_seldom_sought()
def build(
    site: Path = paths.SITE,
    species: Path = paths.SPECIES,
    tables: Path = paths.TABLES,
    before: Sources | None = None,
) -> None:
    """Build the whole site into ``site``; what was there stays until the new one is whole.

    Other records than the project's need a folder of their own for their tables; the calculators go on
    with the project's. ``before``: the sources as somebody has looked at them already.
    Raises ``BadRecords``, ``BuildFailed``, ``Missing`` or ``TablesInUse``.
    """
    before = before or sources(species, tables)
    with step("checking the records, making the tables"):
        known = checked_once(species, tables, before.rest)
        write_schemas()
    forget(site)
    of = before._replace(tables=hash_of_tables(tables))
    said = old_laws(known.library)
    for line in said:
        say(line)
    code()  # read once, before processes share the work that asks for it
    known = known.beside_also(of.tables)
    fresh = site.with_name(f"{site.name}-fresh")
    set_aside(paths.SOURCE, paths.SOURCE_BEFORE)
    with (
        made_anew(paths.SOURCE, paths.SOURCE_BEFORE) as source,
        made_anew(fresh, paths.SITE_BEFORE) as folder,
        large_files_begun(known, source, folder) as large_files,
    ):
        with step("writing the pages"):
            from scripts.pages.write import write_source  # the pages import the calculators

            write_source(known, source)
        del known  # the records, which nothing that follows needs
        with step("building the site"):
            write_site(folder, large_files)
    set_aside(site, paths.SITE_BEFORE)
    fresh.rename(site)
    if of == sources(species, tables):  # else something has been changed meanwhile
        write_stamp(site, of, said)
    throw_away_unused()


def old_laws(library: Library) -> list[str]:
    """What to say of law lists whose text may be more than a year old, so that somebody reads anew."""
    old = [slug for slug, rule in library.rules.items() if rule.is_old(date.today())]
    if not old:
        return []
    return [f"  law lists whose text is over a year old or undated: {', '.join(sorted(old))}"]


def checked_once(species: Path, tables: Path, rest: str) -> KeptFiles:
    """As ``checked``, with each text parsed once, as long as it stays the same."""
    texts = ParsedTexts.kept(str(species))
    known = checked(species, tables, rest, texts.document)
    texts.keep()
    return known


def checked(
    species: Path, tables: Path, rest: str, parsed: Callable[[str], Document] = document_of
) -> KeptFiles:
    """The records, their tables made, and tried by the calculators; with what is kept of their files.

    ``rest`` is the hash of all other sources. ``parsed`` makes a document of a text.

    Raises ``BadRecords`` with every fault, also those of a record that is broken otherwise.
    """
    reading = read_records(species, parsed)
    faults = [*reading.faults, *record_faults(reading)]
    settled = not faults
    cells = cells_of_texts(reading) if settled else {}
    known = KeptFiles(reading.library, rest, cells)
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


def write_site(folder: NewFolder, large_files: Callable[[], None]) -> None:
    """Make the site from its source in a folder. ``large_files`` waits until those stand in both.

    Raises ``BuildFailed`` or ``Missing``.
    """
    from scripts.site.frames import Frames
    from scripts.site.offline import write_offline_list
    from scripts.site.one_sheet import join_sheets
    from scripts.site.page_links import broken_links
    from scripts.site.ready_pages import put_contents, read_pages
    from scripts.site.theme import settled_theme

    site = folder.path
    pages = read_pages(paths.SOURCE)
    for name in {name for name in names_below(paths.SOURCE) if not is_large(name)} - pages.keys():
        folder.copy(paths.SOURCE / name, name)
    frames = Frames({name: page.headings for name, page in pages.items()})
    frames.make(run_builder)
    frames.write_beside(site)
    classes = put_contents(paths.SOURCE, folder, put_scripts(site), frames, pages)
    join_sheets(site, settled_theme(site, classes))
    large_files()
    files = set(names_below(paths.SOURCE))
    if broken := list(broken_links({name: page.links for name, page in pages.items()}, files)):
        raise BuildFailed("\n".join(broken))
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
