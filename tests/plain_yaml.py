"""A file as plain data, by the general YAML library: apart from the project's own reading of records."""

from pathlib import Path
from typing import Any

import yaml

LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)  # ten times as fast where there is one


def read_yaml(path: Path) -> Any:
    """What the file holds, afresh at each call."""
    return yaml.load(path.read_text(encoding="utf-8"), Loader=LOADER)
