"""Docstrings of public functions name units, shapes and errors: all of ours, and first small samples.

The tests see words, not their truth. That a unit is the right one, the tests of each formula hold.
"""

import ast
from importlib import import_module

import pytest

from scripts.structure import docstrings
from scripts.structure.modules import read_modules
from scripts.structure.raised import READERS, errors_that_leave
from tests.own_modules import own_modules

CHECKS = ("without_docstring", "without_unit", "without_shape", "without_error")


@pytest.fixture(scope="module")
def modules():
    return own_modules()


@pytest.fixture
def faults(tmp_path):
    """A maker: the faults that a check finds in one module of this text, ``calculators.sample``."""

    def found(check, text):
        path = tmp_path / "calculators" / "sample.py"
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="utf-8")
        listed = getattr(docstrings, check)(read_modules(tmp_path))
        return [fault.removeprefix("calculators.sample.") for fault in listed]

    return found


@pytest.mark.parametrize("check", CHECKS)
def test_public_docstrings_say_it(modules, check):
    assert len(list(docstrings.public_functions(modules))) > 2000
    assert getattr(docstrings, check)(modules) == []


@pytest.mark.parametrize(
    ("text", "missing"),
    [
        ('"""A module."""\n\ndef shown():\n    pass\n', ["shown"]),
        ('"""A module."""\n\nclass Tank:\n    def full(self):\n        """."""\n', ["Tank"]),
        ("x = 1\n", ["calculators.sample"]),
        ('"""A module."""\n\ndef _inside():\n    pass\n', []),
    ],
)
def test_a_missing_docstring_is_seen(faults, text, missing):
    assert faults("without_docstring", text) == missing


@pytest.mark.parametrize(
    ("function", "missing"),
    [
        ('def left(level: float) -> str:\n    """What is left."""\n', ["left(level)"]),
        ('def left(level: float) -> str:\n    """What is left, in mg/L."""\n', ["left(level)"]),
        ('def left(level: float) -> str:\n    """The level is in mg/L."""\n', []),
        ('def left(level_mg_l: float) -> str:\n    """What is left."""\n', []),
        ('def left(g: float) -> str:\n    """What is left."""\n', ["left(g)"]),
        ('def left(level: float | None) -> str:\n    """What is left."""\n', ["left(level)"]),
        ('def left(levels: list[float]) -> str:\n    """What is left."""\n', ["left(levels)"]),
        ('def left(level: str) -> float:\n    """What is left."""\n', ["left -> number"]),
        ('def left(level: str) -> float:\n    """What is left, in grams."""\n', []),
        ('def left_days(level: str) -> float:\n    """What is left."""\n', []),
        ('def left(*, height: int) -> str:\n    """What is left."""\n', ["left(height)"]),
        ('def left(row: int) -> str:\n    """What is left."""\n', []),
        ('def left(row: float) -> str:\n    """What is left."""\n', ["left(row)"]),
        ('def left(level: str) -> float:\n    """What is long."""\n', ["left -> number"]),
    ],
)
def test_a_number_without_a_unit_is_seen(faults, function, missing):
    assert faults("without_unit", f'"""A module."""\n\n{function}') == missing


def test_a_method_may_leave_its_unit_to_its_class(faults):
    text = '"""A module."""\n\nclass Level:\n    """{}"""\n\n    def top(self) -> float:\n        """."""\n'
    assert faults("without_unit", text.format("A level.")) == ["Level.top -> number"]
    assert faults("without_unit", text.format("A level in mg/L.")) == []


@pytest.mark.parametrize(
    ("returns", "words", "missing"),
    [
        ("list[float]", "The levels.", ["course"]),
        ("list[float]", "The level of each day.", []),
        ("dict[str, float]", "The levels.", ["course"]),
        ("dict[str, float]", "The levels by the name of the tank.", []),
        ("tuple[float, float]", "The levels.", ["course"]),
        ("tuple[float, float]", "The least and the most.", []),
        ("tuple[float, ...]", "The least and the most.", ["course"]),
        ("tuple[list[float], list[float]]", "Days and levels.", ["course"]),
        ("list[str]", "The names.", []),
    ],
)
def test_a_sequence_without_a_shape_is_seen(faults, returns, words, missing):
    text = f'"""A module."""\n\ndef course(tank) -> {returns}:\n    """{words}"""\n'
    assert faults("without_shape", text) == missing


@pytest.mark.parametrize(
    ("body", "errors"),
    [
        ("raise ValueError('no')", {"ValueError"}),
        ("raise errors.Refused('no')", {"Refused"}),
        ("raise Fault.of('no') from None", {"Fault"}),
        ("if x:\n        for y in x:\n            raise KeyError", {"KeyError"}),
        ("match x:\n        case 1:\n            raise KeyError", {"KeyError"}),
        ("try:\n        raise KeyError\n    except KeyError:\n        pass", set()),
        ("try:\n        raise KeyError\n    except ValueError:\n        pass", {"KeyError"}),
        (
            "try:\n        x()\n    except (KeyError, OSError):\n        raise Bad from None",
            {"Bad"},
        ),
        ("try:\n        x()\n    except KeyError as wrong:\n        raise", set()),
        ("def inner():\n        raise KeyError\n    return inner", set()),
        ("return read(x)", {"BadInput"}),
        ("with x:\n        y = [read(z) for z in x]", {"BadInput"}),
        ("try:\n        read(x)\n    except ValueError:\n        pass", set()),
        ("try:\n        read(x)\n    except KeyError:\n        pass", {"BadInput"}),
    ],
)
def test_errors_that_leave_a_function_are_seen(body, errors):
    function = ast.parse(f"def sample(x):\n    {body}\n").body[0]
    assert errors_that_leave(function, {"read": {"BadInput"}}) == errors


def test_an_error_that_no_docstring_names_is_seen(faults):
    text = (
        '"""A module."""\n\nfrom calculators.core.read import read_inputs as read\n\n'
        'def opened(raw):\n    """What it holds.{}"""\n    return read((), raw)\n'
    )
    assert faults("without_error", text.format("")) == ["opened: BadInput"]
    assert faults("without_error", text.format(" Raises ``BadInput``.")) == []


@pytest.mark.parametrize("reader", READERS)
def test_each_reader_is_there_and_names_its_errors(reader):
    room, _, name = reader.rpartition(".")
    words = getattr(import_module(room), name).__doc__
    assert [error for error in READERS[reader] if f"``{error}``" not in words] == []


@pytest.mark.parametrize("room", docstrings.PICTURES)
def test_rooms_of_pictures_tell_their_unit(room):
    assert "units of the picture" in import_module(room).__doc__
