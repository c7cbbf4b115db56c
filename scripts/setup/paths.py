"""Where things are. Standard library only: this runs before anything is installed."""

import os
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
LOCKS = ROOT / "scripts" / "locks"
VENV = ROOT / ".venv"
BUILD = ROOT / "build"  # everything that can be made again
DOCS = ROOT / "docs"
SPECIES = ROOT / "species"
TABLES = ROOT / "calculators" / "data"  # what the build writes from the records
PUBLISHED = ROOT / "tests" / "published"  # figures that calculators must reproduce
SITE = ROOT / "site"
SOURCE = BUILD / "docs"  # the site's source, as the pages are written
# What the build before last left: what stays the same is taken of it.
SITE_BEFORE, SOURCE_BEFORE = BUILD / "site-before", BUILD / "docs-before"
SEARCH = "assets/search.json"  # what the search page reads, in the site and its source
SCHEMAS = BUILD / "schema"  # of the records, for editors

WINDOWS = os.name == "nt"


def python_of(environment: Path) -> Path:
    """The interpreter of a virtual environment."""
    return environment / ("Scripts/python.exe" if WINDOWS else "bin/python")
