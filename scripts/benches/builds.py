"""Build time and peak memory by number of records, and what a page weighs."""

import gzip
import re
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from scripts.setup.paths import BUILD, ROOT, SITE

COUNTS = (60, 250, 1_000)
BENCH_SITE = BUILD / "bench-site"
KIB = 1024
LOADED = re.compile(r'<(?:link rel="(?:stylesheet|modulepreload)" href|script[^>]* src)="([^"]+)"')


def builds() -> None:
    """A table of seconds and megabytes for 60, 250 and 1,000 records."""
    print("| plant records | build, s | s a record | peak memory, MB | site, MB |")
    print("|---|---|---|---|---|")
    build_of(60)  # the first run compiles and caches what later runs find
    for count in COUNTS:
        seconds, megabytes = build_of(count)
        size = sum(path.stat().st_size for path in BENCH_SITE.rglob("*") if path.is_file())
        print(
            f"| {count} | {seconds:.1f} | {seconds / count:.4f} | {megabytes:.0f} | {size / 1e6:.1f} |",
            flush=True,
        )
    shutil.rmtree(BENCH_SITE, ignore_errors=True)


def build_of(count: int) -> tuple[float, float]:
    """Build a site of so many plants in a process of its own; seconds, and its peak memory in MB.

    Raises ``RuntimeError`` where it fails.
    """
    with tempfile.TemporaryDirectory() as folder:
        species = Path(folder) / "species"
        shutil.copytree(ROOT / "species", species)
        multiply(species / "plants", count)
        code = (
            "import sys; from pathlib import Path; from scripts.site.build import build; "
            "build(*map(Path, sys.argv[1:]))"
        )
        start = time.perf_counter()
        process = subprocess.Popen(
            [sys.executable, "-c", code, str(BENCH_SITE), str(species), f"{folder}/tables"],
            cwd=ROOT,
            stdout=subprocess.DEVNULL,
        )
        if process.wait():
            raise RuntimeError("the build failed; run it by itself to see why")
        seconds = time.perf_counter() - start
    return seconds, resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / KIB


def multiply(plants: Path, count: int) -> None:
    """Copy our records under numbered names until there are so many. Invented; for the bench alone."""
    ours = sorted(plants.glob("*.yml"))
    for number in range(count - len(ours)):
        source = ours[number % len(ours)]
        first, rest = source.read_text(encoding="utf-8").split("\n", 1)
        target = plants / f"{source.stem}-copy-{number}.yml"
        target.write_text(f"{first} copy {number}\n{rest}", encoding="utf-8")


def weights() -> None:
    """What each kind of page loads, as stored and compressed."""
    from scripts.site.build import build

    build(SITE)
    print("| what | KB | KB gzipped |")
    print("|---|---|---|")
    plant = SITE / "plants" / "limnophila-sessiliflora" / "index.html"
    row("style and script of a plant's page", loaded_at_once(plant))
    row("a plant's page", [plant])
    row("a problem's page", [SITE / "problems" / "new-soil-ammonia" / "index.html"])
    row("a calculator's page", [SITE / "calculators" / "free-ammonia" / "index.html"])
    row("the index of plants", [SITE / "plants" / "index.html"])
    row(
        "search: index and engine",
        [SITE / "assets" / "search.json", SITE / "assets" / "finding.js"],
    )
    row("Python for the browser", list((SITE / "runtime").iterdir()))
    stock = BUILD / "npm" / "node_modules" / "pyodide"
    names = (
        "pyodide.mjs",
        "pyodide.asm.js",
        "pyodide.asm.wasm",
        "python_stdlib.zip",
        "pyodide-lock.json",
    )
    row("the same, as it comes", [stock / name for name in names])
    row("the whole book", [path for path in SITE.rglob("*") if path.is_file()])


def loaded_at_once(page: Path) -> list[Path]:
    """The style sheets, scripts and modules that a page names in its head."""
    head = page.read_text(encoding="utf-8").split("</head>", 1)[0]
    return [(page.parent / name).resolve() for name in LOADED.findall(head)]


def row(name: str, files: list[Path]) -> None:
    """One line of the table."""
    data = [path.read_bytes() for path in files]
    packed = sum(len(gzip.compress(content, 9)) for content in data)
    print(f"| {name} | {sum(map(len, data)) / 1000:.1f} | {packed / 1000:.1f} |")
