"""The image of memory from which a first visit over a quick line starts Python, made once for each state.

It follows from the code, and from those tables that the first calculators read to answer their examples.
"""

import json
import tempfile
from pathlib import Path
from typing import Any, NamedTuple

from scripts.runtime.bytecode import code_state
from scripts.runtime.pack import packed
from scripts.setup.file_hash import hash_of_files
from scripts.setup.node import node
from scripts.setup.paths import BUILD, TABLES
from scripts.setup.say import Missing, step

MADE = BUILD / "start-image"
IMAGE = MADE / "image.pack"
MAKER = Path(__file__).with_suffix(".mjs")


class StartImage(NamedTuple):
    """An image, packed; ``words`` of memory, of four octets, lack what the interpreter's code brings."""

    octets: bytes
    words: int


def start_image(runtime: Path) -> StartImage:
    """The image, made from what the ``runtime`` folder holds. Raises ``Missing`` where it cannot be made."""
    stamp = MADE / "made-from.json"
    try:
        made = json.loads(stamp.read_text(encoding="utf-8"))
        if made["from"] == state(made["tables"]):
            return StartImage(IMAGE.read_bytes(), made["words"])
    except (OSError, ValueError, KeyError):
        pass  # none was made, or not to its end
    with step("making the memory that Python starts from"):
        MADE.mkdir(parents=True, exist_ok=True)
        stamp.unlink(missing_ok=True)
        made = make(runtime, IMAGE)
        stamp.write_text(json.dumps({**made, "from": state(made["tables"])}), encoding="utf-8")
    return StartImage(IMAGE.read_bytes(), made["words"])


def make(runtime: Path, target: Path) -> dict[str, Any]:
    """Write the packed image; its ``words``, and the ``tables`` that are in it. Raises ``Missing``."""
    with tempfile.TemporaryDirectory() as work:
        image = Path(work) / "image.bin"
        done = node(str(MAKER), str(runtime), str(image))
        if done.returncode:
            raise Missing(
                f"the memory that Python starts from could not be made: {done.stderr[-2_000:]}"
            )
        target.write_bytes(packed(image.read_bytes()))
    made: dict[str, Any] = json.loads(done.stdout.strip().splitlines()[-1])
    return made


def state(tables: list[str]) -> list[str]:
    """All that the image depends on: the code, and the octets of these tables."""
    return [code_state(), hash_of_files(TABLES / f"{name}.json" for name in tables)]
