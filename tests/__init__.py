"""Tests of the project."""

import sys

# Where a machine is told to keep no compiled code, each worker would compile every module of the tests anew:
# half of the time until the first test. A Python that a test starts goes on as the machine says.
sys.dont_write_bytecode = False
