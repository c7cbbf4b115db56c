"""Whether a site stands as the last build left it, of the same sources: then there is nothing to do.

Every source is hashed, and every octet of what was built of it, so that neither a change nor a build that was
stopped half-way nor a hand in the site is overlooked. Standard library only: this is asked before
anything else is imported.
"""

import hashlib
import json
import marshal
import os
from pathlib import Path
from typing import NamedTuple

from scripts.records.followed import is_followed
from scripts.setup.file_hash import all_known, files_below, hash_of_files, know_too
from scripts.setup.paths import BUILD, ROOT, SCHEMAS, SOURCE, SPECIES, TABLES
from scripts.setup.surroundings import surroundings

STAMPS = BUILD / "whole"
ROOMS = ("calculators", "docs", "scripts", "species", "tests/published")
ROOT_FILES = ("mkdocs.yml", "pyproject.toml", "README.md", "LICENSE", "LICENSE-DATA")


class Sources(NamedTuple):
    """Hashes of what a site is made from: the records of which a build follows what is read of them, the
    tables, which it makes anew, and all the rest.
    """

    records: str
    rest: str
    tables: str


def sources(species: Path = SPECIES, tables: Path = TABLES) -> Sources:
    """What a site of these records would be made from now."""
    return with_surroundings(source_hashes(species, tables))


def sources_in_octets() -> bytes:
    """The hashes of the project's sources, and the digests of their files, for another process."""
    return marshal.dumps((list(source_hashes(SPECIES, TABLES)), all_known()))


def sources_from_octets(seen: bytes) -> Sources:
    """The project's sources as another process has looked at them a moment ago; looked at now where none
    has, or it was killed as it told of them.
    """
    try:
        hashes, known = marshal.loads(seen)
    except (EOFError, ValueError, TypeError):
        return sources()
    know_too(known)
    return with_surroundings(Sources(*hashes))


def with_surroundings(hashes: Sources) -> Sources:
    """The sources, and with the rest of them what a build follows from beside our files."""
    return hashes._replace(rest=f"{surroundings()} {hashes.rest}")


def source_hashes(species: Path, tables: Path) -> Sources:
    """The hashes of the sources alone."""
    files = [str(ROOT / name) for name in ROOT_FILES]
    for folder in dict.fromkeys([*(ROOT / room for room in ROOMS), species]):
        files += files_below(folder)
    followed = [path for path in files if is_followed(path, species)]
    apart = {*followed, *(path for path in files if os.path.dirname(path) == str(TABLES))}
    rest = hash_of_files(path for path in files if path not in apart)
    return Sources(hash_of_files(followed), rest, hash_of_tables(tables))


def hash_of_tables(tables: Path = TABLES) -> str:
    """A hash of the tables that a build has made of records."""
    return hash_of_files(files_below(tables))


def as_built(site: Path, *, just_made: bool = False) -> str:
    """A hash of all that a build leaves: the site, the source of its pages, the schemas for editors."""
    folders = (site.resolve(), SOURCE, SCHEMAS)
    below = (path for folder in folders for path in files_below(folder))
    return hash_of_files(below, just_made=just_made)


def write_stamp(site: Path, of: Sources, said: list[str]) -> None:
    """Note what a site that has just been built follows from, and the lines that the build said of it."""
    path = stamp_of(site)
    path.parent.mkdir(parents=True, exist_ok=True)
    known = {"of": of, "built": as_built(site, just_made=True), "said": said}
    path.write_text(json.dumps(known), encoding="utf-8")


def forget(site: Path) -> None:
    """Have the next build make a site whatever was there."""
    stamp_of(site).unlink(missing_ok=True)


def said_of_unchanged(site: Path, now: Sources) -> list[str] | None:
    """What the last build said of a site that stands as it left it, of the sources that there are ``now``;
    None where it has to be built.
    """
    try:
        known = json.loads(stamp_of(site).read_text(encoding="utf-8"))
        of, built, said = known["of"], known["built"], known["said"]
    except (OSError, ValueError, KeyError, TypeError):
        return None
    if of != list(now) or built != as_built(site):
        return None
    return [str(line) for line in said]


def only_records_differ(site: Path, now: Sources) -> bool:
    """Whether a site was built of what there is ``now``, but for the records that a build follows."""
    try:
        of = json.loads(stamp_of(site).read_text(encoding="utf-8"))["of"]
    except (OSError, ValueError, KeyError, TypeError):
        return False
    return bool(of[1:] == [now.rest, now.tables])


def stamp_of(site: Path) -> Path:
    """The file that says what a site follows from. It stands outside, since a site is published as it is."""
    return STAMPS / f"{hashlib.sha256(str(site.resolve()).encode()).hexdigest()}.json"
