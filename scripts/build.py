"""Builds the site: check the records, write the pages, run the site builder, add what is not Markdown."""

import shutil
import subprocess
import sys
from pathlib import Path

from scripts.offline import write_offline_list
from scripts.pages.write import SOURCE, write
from scripts.records.load import BadRecords, load
from scripts.records.schema import write_schemas
from scripts.runtime.make import make_runtime
from scripts.setup.node import minified
from scripts.setup.paths import ROOT, SITE
from scripts.setup.say import Missing, step


class BuildFailed(Exception):
    """The site builder refused; its words are the message."""


def build(site: Path = SITE, species: Path = ROOT / "species") -> None:
    """Build the whole site into ``site``. Raises ``BadRecords``, ``BuildFailed`` or ``Missing``.

    What was in ``site`` stays until the new one is whole.
    """
    with step("checking the records"):
        library = load(species)
        write_schemas()
    runtime = make_runtime()
    with step("writing the pages"):
        write(library)
        shutil.copytree(runtime, SOURCE / "runtime", ignore=shutil.ignore_patterns("made-from.txt"))
        shutil.copyfile(
            minified("minisearch/dist/es/index.js"), SOURCE / "assets" / "minisearch.js"
        )
    with step("building the site"):
        fresh = site.with_name(f"{site.name}-fresh")
        shutil.rmtree(fresh, ignore_errors=True)
        run_builder(fresh)
        write_offline_list(fresh)
        shutil.rmtree(site, ignore_errors=True)
        fresh.rename(site)


def run_builder(target: Path) -> None:
    """The one place that knows which site builder there is."""
    command = [sys.executable, "-m", "mkdocs", "build", "--strict", "--quiet", "-d", str(target)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True)
    if done.returncode:
        raise BuildFailed(f"{done.stdout}{done.stderr}".strip())


__all__ = ["BadRecords", "BuildFailed", "Missing", "build"]
