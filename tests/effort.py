"""How much a run tries: a sample and no long run in everyday use, everything with ``--thorough``."""

import os
from collections.abc import Sequence
from typing import TypeVar

import pytest
from hypothesis import settings

Case = TypeVar("Case")

THOROUGH = "MULMBOOK_THOROUGH"  # set by --thorough, and inherited by every worker
PROFILE = "mulmbook"
EVERYDAY_SHARE = 0.03
FEWEST = 8  # below that a property is hardly tried


def thorough() -> bool:
    """Whether the full numbers were asked for."""
    return THOROUGH in os.environ


def long_run() -> pytest.MarkDecorator:
    """For a test that builds the site anew or kills browsers: only a thorough run has it."""
    return pytest.mark.skipif(not thorough(), reason="a long run: --thorough has it")


def how_many(full: int) -> int:
    """The number of draws where the full run makes ``full``."""
    return full if thorough() else max(min(FEWEST, full), round(full * EVERYDAY_SHARE))


def examples(full: int) -> settings:
    """Settings for a property that needs another number of examples than the profile's."""
    return settings(max_examples=how_many(full))


def share_of(cases: Sequence[Case], everyday: int) -> list[Case]:
    """All cases in a thorough run, else every so many-th: ``everyday`` says which.

    Take a number that no step of the cases' order divides, so that each of them stays in the sample.
    """
    return list(cases if thorough() else cases[::everyday])


def load_profile() -> None:
    """The one profile: no stopwatch, and the same draws in every run of a build server."""
    fixed = "CI" in os.environ
    settings.register_profile(
        PROFILE,
        max_examples=how_many(100),
        deadline=None,
        derandomize=fixed,
        database=None if fixed else settings.default.database,
        print_blob=True,
    )
    settings.load_profile(PROFILE)
