"""The calculators as a wheel."""

import os
import subprocess
import sys
from pathlib import Path

from scripts.setup.paths import ROOT
from scripts.setup.say import Missing

FIXED_TIME = "946684800"  # 1 January 2000: same sources, same bytes


def build_wheel(target: Path) -> Path:
    """Build the wheel into ``target``, with no network. Raises ``Missing`` where that fails."""
    command = [
        *(sys.executable, "-m", "build", "--wheel", "--no-isolation"),
        *("--outdir", str(target), str(ROOT)),
    ]
    environment = {**os.environ, "SOURCE_DATE_EPOCH": FIXED_TIME}
    done = subprocess.run(command, capture_output=True, text=True, env=environment)
    if done.returncode:
        raise Missing(f"the wheel of calculators could not be built: {done.stdout}{done.stderr}")
    return next(target.glob("*.whl"))
