"""Tests of the project."""

import os
import sys

# Where a machine is told to keep no compiled code, each worker, and each Python that a test starts, would
# compile every module anew: more than half of the time until the first test.
sys.dont_write_bytecode = False
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
