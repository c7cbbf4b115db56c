"""How long a build takes by number of records, beside a bare loop over the same pages, and its memory."""

import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple

from scripts.benches.tree_memory import PeakMemory
from scripts.setup.paths import BUILD, ROOT, SITE_BEFORE, SOURCE, SPECIES

COUNTS = (250, 1_000)  # beside ours; of ours none is left out
BENCH_SITE = BUILD / "bench-site"
CHANGED = "lemna-minor"  # the record that is changed in one word
BUILD_ONCE = """
import sys
from pathlib import Path
from scripts.setup import kept
site, species, tables, kept.FOLDER = map(Path, sys.argv[1:])
from scripts.site.serve_command import renew
renew(site, species, tables)
"""
BARE_LOOP = """
import time
from scripts.setup.paths import SOURCE
from scripts.setup import kept
kept.kept = lambda kind, ingredients, make: make()
from scripts.site import page_content
page_content.kept = kept.kept
page_content.ReadyBlocks.blocks = lambda self, text: ()  # Markdown looks at all of a page
from scripts.site.watch_page import Renderer
renderer, start = Renderer(), time.perf_counter()
for path in sorted(SOURCE.rglob("*.md")):
    renderer.html(path.relative_to(SOURCE).as_posix(), path.read_text(encoding="utf-8"))
print(time.perf_counter() - start)
"""


class TimedBuild(NamedTuple):
    """One build: seconds, and the peak of the memory of all its processes together, MB."""

    seconds: float
    memory_mb: float


def builds() -> None:
    """A table of seconds and megabytes for our records, and for 250 and 1,000."""
    print(
        "The bare loop reads each page of the same site with Markdown and fills the theme, in one process\n"
        "that keeps nothing. First: nothing is kept from an earlier build. Once more: nothing has changed.\n"
        "One record changed: for the second time.\n"
    )
    print(
        "| plant records | bare loop, s | first, s | times the loop | once more, s | one record changed, s "
        "| memory of all processes, MB | site, MB |"
    )
    print("|---|---|---|---|---|---|---|---|")
    ours = len(list((SPECIES / "plants").glob("*.yml")))
    build_row(ours, shown=False)  # the first compiles what all later ones find
    for count in sorted({*COUNTS, ours}):
        build_row(count)
    shutil.rmtree(BENCH_SITE, ignore_errors=True)


def build_row(count: int, *, shown: bool = True) -> None:
    """Build a site of so many plants again and again; a line of the table."""
    with records(count) as folder:
        for left in (BENCH_SITE, SITE_BEFORE, SOURCE):
            shutil.rmtree(left, ignore_errors=True)
        first = build_in(folder)
        if not shown:
            return
        bare = float(in_a_process(BARE_LOOP).splitlines()[-1])
        again = build_in(folder)
        for _ in range(2):  # the first time there is no site before the last to take files of
            change(folder / "species" / "plants" / f"{CHANGED}.yml")
            changed = build_in(folder)
        size = sum(path.stat().st_size for path in BENCH_SITE.rglob("*") if path.is_file())
        peak = max(run.memory_mb for run in (first, again, changed))
        print(
            f"| {count} | {bare:.1f} | {first.seconds:.1f} | {first.seconds / bare:.2f} "
            f"| {again.seconds:.1f} | {changed.seconds:.1f} | {peak:.0f} | {size / 1e6:.1f} |",
            flush=True,
        )


def build_in(folder: Path) -> TimedBuild:
    """Build the records of a folder. Raises ``RuntimeError`` where that fails."""
    start = time.perf_counter()
    with PeakMemory() as memory:
        in_a_process(BUILD_ONCE, BENCH_SITE, folder / "species", folder / "tables", folder / "kept")
    return TimedBuild(time.perf_counter() - start, memory.peak_mb)


def in_a_process(code: str, *words: Path) -> str:
    """Run a piece of Python in a process of its own; what it prints. Raises ``RuntimeError``."""
    command = [sys.executable, "-c", code, *map(str, words)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, env=os.environ)
    if done.returncode:
        raise RuntimeError(f"a build failed: {done.stderr.strip()}")
    return done.stdout


@contextmanager
def records(count: int) -> Iterator[Path]:
    """A folder with so many plant records, and all others of ours, for as long as it is needed."""
    with tempfile.TemporaryDirectory() as folder:
        species = Path(folder) / "species"
        shutil.copytree(SPECIES, species)
        multiply(species / "plants", count)
        yield Path(folder)


def multiply(plants: Path, count: int) -> None:
    """Copy our records under numbered names until there are so many. Invented; for the bench alone."""
    ours = sorted(plants.glob("*.yml"))
    for number in range(count - len(ours)):
        source = ours[number % len(ours)]
        first, rest = source.read_text(encoding="utf-8").split("\n", 1)
        target = plants / f"{source.stem}-copy-{number}.yml"
        target.write_text(f"{first} copy {number}\n{rest}", encoding="utf-8")


def change(record: Path) -> None:
    """Change the verdict of a record by one word, so that its page and all that quotes it change."""
    text = record.read_text(encoding="utf-8")
    record.write_text(text.replace("\nverdict: ", "\nverdict: Changed. ", 1), encoding="utf-8")
