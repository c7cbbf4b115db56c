"""Builds the site: records, tables, checks, pages, the site builder, and what is not Markdown."""

from collections.abc import Callable
from contextlib import nullcontext
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
from scripts.setup.kept import code, throw_away_unused
from scripts.setup.new_folder import made_anew, set_aside
from scripts.setup.rubbish import rubbish_seldom_sought
from scripts.setup.say import Missing, say, step
from scripts.site.large_files import write_files_of_records
from scripts.site.making import Making, making_begun
from scripts.site.nothing_new import Sources, forget, hash_of_tables, sources, write_stamp
from scripts.site.site_builder import BuildFailed
from scripts.tables.make import TablesInUse, texts_of_tables, write_tables


@rubbish_seldom_sought()
def build(
    site: Path = paths.SITE,
    species: Path = paths.SPECIES,
    tables: Path = paths.TABLES,
    before: Sources | None = None,
    begun: Making | None = None,
) -> None:
    """Build the whole site into ``site``; what was there stays until the new one is whole.

    Other records than the project's need a folder of their own for their tables; the calculators go on
    with the project's. ``before``: the sources as somebody has looked at them already; ``begun``: the
    making of a site of these, where it was begun.
    Raises ``BadRecords``, ``BuildFailed``, ``Missing`` or ``TablesInUse``.
    """
    before = before or sources(species, tables)
    with nullcontext(begun) if begun else making_begun(site, before) as making:
        with step("checking the records, making the tables"):
            known = checked_once(species, tables, before.rest)
            write_schemas()
        forget(site)
        of = before._replace(tables=hash_of_tables(tables))
        if of != before:
            making.take_over()  # what it has brought may be of the tables before
        said = old_laws(known.library)
        for line in said:
            say(line)
        code()  # read once, before processes share the work that asks for it
        known = known.beside_also(of.tables)
        set_aside(paths.SOURCE, paths.SOURCE_BEFORE)
        with made_anew(paths.SOURCE, paths.SOURCE_BEFORE) as source:
            making.source_is_there(source)
            with step("writing the pages"):
                from scripts.pages.write import write_pages  # which imports the calculators

                making.pages_stand(write_pages(known, source, making.put_unchanged))
                write_files_of_records(known, source, making.folder)
                known.keep()
            del known  # the records, which nothing that follows needs
            with step("building the site"):
                making.finish()
        set_aside(site, paths.SITE_BEFORE)
        making.folder.path.rename(site)
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
        known.keep()
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


__all__ = ["BadRecords", "BuildFailed", "Missing", "TablesInUse", "build"]
