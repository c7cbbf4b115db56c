"""How many claims rest on what: by the kind of their sources, and by how sure they are called."""

from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

from scripts.records.claim import COMMON_PRACTICE, Claim
from scripts.records.load import read_records
from scripts.records.written import mappings
from scripts.setup.paths import SPECIES

KEEPERS = "keepers alone"
KINDS = ("paper", "book", "flora", "standard", "law", "dataset", "names", KEEPERS)
GRADES = ("well-documented", "reported", "keepers-say", "uncertain")
READ = ("document", "abstract", "second-hand", "memory")


class CountedClaim(NamedTuple):
    """One claim: the kind of record, whether it is a figure, its best source, and its grade."""

    record: str
    is_figure: bool
    kind: str
    read: str
    grade: str


def claims(folder: Path = SPECIES) -> None:
    """Print the claims of a folder of records, two tables."""
    found = list(counted(folder))
    print_table("By the kind of source", found, KINDS, "kind")
    print_table("By how much of the best source was read", found, (*READ, KEEPERS), "read")
    print_table("By how sure", found, GRADES, "grade")


def counted(folder: Path) -> Iterator[CountedClaim]:
    """Every claim of every record of a folder."""
    reading = read_records(folder)
    sources = reading.library.sources
    for draft in reading.every_draft():
        record = draft.path.parent.name if draft.path.parent != folder else draft.path.stem
        for _, part in mappings(draft.value, draft.place):
            if "source" in part and "sure" in part:
                yield count_claim(record, part, sources)


def count_claim(record: str, part: dict[str, Any], sources: Any) -> CountedClaim:
    """One claim, by the source of which most was read."""
    claim = Claim.model_validate({"source": part["source"], "sure": part["sure"]})
    named = [sources[key] for key in claim.sources if key != COMMON_PRACTICE]
    if not named:
        return CountedClaim(record, "low" in part, KEEPERS, KEEPERS, claim.grade)
    best = min(named, key=lambda source: READ.index(source.seen))
    return CountedClaim(record, "low" in part, best.kind, best.seen, claim.grade)


def print_table(
    title: str, found: list[CountedClaim], columns: tuple[str, ...], field: str
) -> None:
    """One table in Markdown: a row a kind of record, one for figures alone and one for all."""
    print(f"\n{title}\n\n| | all | {' | '.join(columns)} |\n|{'---|' * (len(columns) + 2)}")
    rows = {
        name: [one for one in found if one.record == name]
        for name in sorted({one.record for one in found})
    }
    rows["figures of plants"] = [one for one in found if one.is_figure and one.record == "plants"]
    rows["all"] = found
    for name, part in rows.items():
        by_column = Counter(getattr(one, field) for one in part)
        cells = [f"{by_column[column]:,}" for column in columns]
        print(f"| {name} | {len(part):,} | {' | '.join(cells)} |")
