"""Checks that need more than one record: references, unused sources, names, filled calculators."""

from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

from pydantic import BaseModel

from calculators.core.listing import load_all
from calculators.core.result import BadInput
from calculators.core.run import run
from calculators.diagnosis.answer import Readings
from scripts.records import demo, evidence, guide_check
from scripts.records.check_names import trade_names
from scripts.records.claim import COMMON_PRACTICE, Claim
from scripts.records.lines import Finding, Place, finding_at
from scripts.records.published import cases

if TYPE_CHECKING:
    from scripts.records.load import Library


def check(library: "Library", folder: Path, broken: set[Path]) -> Iterator[Finding]:
    """Every finding about how the records hang together.

    What refers to a broken file is not judged, since mending the file may mend the reference.
    """
    checker = Checker(library, folder)
    if folder / "sources.yml" not in broken:
        yield from checker.sources(judge_unused=not broken)
    yield from checker.sureness()
    sources_whole = folder / "sources.yml" not in broken
    yield from guide_check.findings(library, folder, judge_sources=sources_whole)
    yield from checker.references("plant", "plants")
    yield from checker.references("problem", "problems")
    yield from checker.lists_of_plants()
    yield from checker.grazers()
    yield from checker.filled_calculators()
    yield from demo.findings(checker)
    if folder / "findings.yml" not in broken:
        yield from evidence.findings(checker)
        yield from evidence.rows(checker)
    yield from checker.double_names()
    yield from trade_names(checker)


class Checker:
    """Holds the library while it is checked."""

    def __init__(self, library: "Library", folder: Path) -> None:
        self.library = library
        self.folder = folder

    def records(self) -> Iterator[tuple[Path, Any]]:
        """Every record with its file; the entries of places.yml as one, by key."""
        for kind in ("plants", "animals", "problems", "rules", "names"):
            for slug, record in getattr(self.library, kind).items():
                yield self.folder / kind / f"{slug}.yml", record
        for finding in self.library.findings.values():
            yield self.folder / "findings.yml", finding
        yield self.folder / "places.yml", self.library.places

    def finding(self, path: Path, place: Place, message: str) -> Finding:
        """A finding at a place in a file."""
        return finding_at(self.library.documents, path, place, message)

    def sources(self, *, judge_unused: bool) -> Iterator[Finding]:
        """Every source key must stand in sources.yml, and every source there must be used."""
        used: set[str] = set()
        for path, record in self.records():
            for place, keys in source_keys(record):
                used |= set(keys)
                for key in keys:
                    if key != COMMON_PRACTICE and key not in self.library.sources:
                        yield self.finding(
                            path,
                            place,
                            f"{key} is no key of sources.yml; add the source there, "
                            f"or write {COMMON_PRACTICE}",
                        )
        used |= guide_check.keys_used(self.library)
        used |= {case.source for name in load_all() for case in cases(name)}
        for spec in load_all().values():
            used |= set(spec.sources)
            for key in set(spec.sources) - set(self.library.sources):
                path = self.folder / "sources.yml"
                yield self.finding(
                    path, (), f"{key} is missing; the calculator {spec.name} cites it"
                )
        for key in sorted(set(self.library.sources) - used) if judge_unused else ():
            yield self.finding(self.folder / "sources.yml", (key,), "is used nowhere; remove it")

    def sureness(self) -> Iterator[Finding]:
        """What rests on common practice alone cannot be well documented."""
        for path, record in self.records():
            for place, claim in claims(record):
                if claim.sure == "well-documented" and set(claim.sources) == {COMMON_PRACTICE}:
                    message = (
                        "well-documented needs a named source; allowed here: reported, uncertain"
                    )
                    yield self.finding(path, (*place, "sure"), message)

    def references(self, key: str, kind: str) -> Iterator[Finding]:
        """Every slug that names another record must have that record's file."""
        for path, record in self.records():
            for place, slug in values_of(record, key):
                if not (self.folder / kind / f"{slug}.yml").exists():
                    message = f"{slug} has no record in species/{kind}/"
                    yield self.finding(path, place, message)

    def lists_of_plants(self) -> Iterator[Finding]:
        """Every plant that an animal eats or suits must have a record, and stand once in its list."""
        for slug, animal in self.library.animals.items():
            path = self.folder / "animals" / f"{slug}.yml"
            lists: list[tuple[Place, list[str]]] = [(("suits", "plants"), animal.suits.plants)]
            lists += [(("harms", n, "plants"), harm.plants) for n, harm in enumerate(animal.harms)]
            for place, plants in lists:
                for number, plant in enumerate(plants):
                    if not (self.folder / "plants" / f"{plant}.yml").exists():
                        message = f"{plant} has no record in species/plants/"
                        yield self.finding(path, (*place, number), message)
                    if plant in plants[:number]:
                        yield self.finding(path, (*place, number), f"{plant} stands twice")

    def grazers(self) -> Iterator[Finding]:
        """Who eats a plant is said in keys of the vocabulary."""
        known = self.library.vocabulary.get("grazer", {})
        for slug, plant in self.library.plants.items():
            path = self.folder / "plants" / f"{slug}.yml"
            for number, one in enumerate(plant.eaten_by):
                for key in ("eaters", "nibblers"):
                    for word in set(getattr(one, key)) - known.keys():
                        message = f"{word} is no grazer; allowed here: {', '.join(known)}"
                        yield self.finding(path, ("eaten_by", number, key), message)

    def filled_calculators(self) -> Iterator[Finding]:
        """A calculator that a problem fills in must take those inputs."""
        for slug, problem in self.library.problems.items():
            path = self.folder / "problems" / f"{slug}.yml"
            for number, filled in enumerate(problem.calculators):
                place = ("calculators", number)
                if filled.calculator not in load_all():
                    known = ", ".join(load_all())
                    message = f"there is no calculator {filled.calculator}; there are {known}"
                    yield self.finding(path, (*place, "calculator"), message)
                    continue
                try:
                    run(filled.calculator, filled.inputs)
                except BadInput as bad:
                    for key, message in bad.problems:
                        yield self.finding(path, (*place, "inputs", key), message)
                for key, reading in filled.readings.items():
                    if key not in filled.inputs or reading not in Readings._fields:
                        message = "must name an input filled in above, and a reading of diagnose"
                        yield self.finding(path, (*place, "readings", key), message)

    def double_names(self) -> Iterator[Finding]:
        """Two records of a kind may not have the same accepted name."""
        for kind in ("plants", "animals"):
            by_name: dict[str, list[str]] = defaultdict(list)
            for slug, record in getattr(self.library, kind).items():
                by_name[record.name].append(slug)
            for slugs in by_name.values():
                for slug in slugs[1:]:
                    path = self.folder / kind / f"{slug}.yml"
                    yield self.finding(path, ("name",), f"is the name of {slugs[0]}.yml too")


def claims(value: Any, place: Place = ()) -> Iterator[tuple[Place, Claim]]:
    """Every claim inside a value, with its place."""
    if isinstance(value, Claim):
        yield place, value
    for step, part in parts(value):
        yield from claims(part, (*place, step))


def source_keys(value: Any, place: Place = ()) -> Iterator[tuple[Place, list[str]]]:
    """Every list of source keys inside a record, with its place."""
    if isinstance(value, BaseModel) and (own := getattr(value, "source", None)):
        yield (*place, "source"), [own] if isinstance(own, str) else list(own)
    for step, part in parts(value):
        yield from source_keys(part, (*place, step))


def values_of(value: Any, key: str, place: Place = ()) -> Iterator[tuple[Place, str]]:
    """Every text under ``key`` inside a value, with its place."""
    for step, part in parts(value):
        if step == key and isinstance(part, str):
            yield (*place, step), part
        yield from values_of(part, key, (*place, step))


def parts(value: Any) -> Iterator[tuple[str | int, Any]]:
    """The parts directly inside a value."""
    if isinstance(value, BaseModel):
        yield from value
    elif isinstance(value, dict):
        yield from value.items()
    elif isinstance(value, list | tuple):
        yield from enumerate(value)
