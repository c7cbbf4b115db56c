"""Two builds of the same sources, file by file: what differs would make every phone fetch it again."""

import hashlib
import os
import subprocess
import sys
import tempfile
from pathlib import Path

from scripts.setup.paths import ROOT

BUILD = """
import shutil
import sys
from pathlib import Path
from scripts.runtime import bytecode, make_runtime, published_wheel
from scripts.setup import kept, paths
from scripts.site import nothing_new
site, made = map(Path, sys.argv[1:])
for room in (bytecode, make_runtime, published_wheel):
    room.MADE = made / room.__name__
kept.FOLDER = made / "kept"
nothing_new.STAMPS = made / "whole"
for left in (paths.SOURCE, paths.SOURCE_BEFORE, paths.SITE_BEFORE):
    shutil.rmtree(left, ignore_errors=True)
from scripts.site.build import build
build(site)
"""
DATED = ("sitemap.xml", "sitemap.xml.gz")  # of the site builder, dated by it; no phone stores them


def same_bytes() -> None:
    """Build twice from nothing, with another order of hashes each time, and print what differs."""
    with tempfile.TemporaryDirectory() as folder:
        first, second = (built(Path(folder) / seed, seed) for seed in ("1", "2"))
    differ = sorted(name for name in first | second if first.get(name) != second.get(name))
    print(f"{len(first):,} files, {len(differ)} differ")
    for name in differ:
        print(f"- {name}")


def built(site: Path, seed: str) -> dict[str, str]:
    """The hash of each file of a build in a process of its own."""
    environment = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT)}
    made = site.with_name(f"made-{seed}")
    command = [sys.executable, "-c", BUILD, str(site), str(made)]
    subprocess.run(command, cwd=ROOT, env=environment, check=True)
    return {
        path.relative_to(site).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(site.rglob("*"))
        if path.is_file() and path.name not in DATED
    }
