"""What each kind of page weighs, as stored and compressed."""

import gzip
import re
from pathlib import Path

from scripts.setup.paths import BUILD, SITE

LOADED = re.compile(r'<(?:link rel="(?:stylesheet|modulepreload)" href|script[^>]* src)="([^"]+)"')


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
