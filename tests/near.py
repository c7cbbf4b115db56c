"""Answers of one calculator by two Pythons: the same, but for the last digits of numbers."""

import pytest


def assert_near(there, here, path, *, relative, absolute=None):
    """The same all through; in the last digits of numbers the machines' own arithmetic may differ.

    ``path`` says in a failure where it is.
    """
    if isinstance(here, dict):
        assert there.keys() == here.keys(), path
        for key, part in here.items():
            assert_near(there[key], part, f"{path}.{key}", relative=relative, absolute=absolute)
    elif isinstance(here, list):
        assert len(there) == len(here), path
        for number, part in enumerate(here):
            inside = f"{path}[{number}]"
            assert_near(there[number], part, inside, relative=relative, absolute=absolute)
    elif isinstance(here, float):
        assert there == pytest.approx(here, rel=relative, abs=absolute), path
    else:
        assert there == here, path
