"""Bytecode is made small without a change to what it does."""

import marshal
import sys
import traceback

import pytest

from scripts.runtime.slim import slim, slim_pyc

SOURCE = '''"""Of the module."""

LIMIT = (
    3
)


class Kept:
    """Of the class."""

    words = "Of the class, in use."


def declared(value):
    """Of the function."""

    def inner():
        """Of what is in it."""
        return (
            value / 0
        )

    return inner()


def read_twice():
    """It is its own answer."""
    return """It is its own answer."""


def undocumented():
    return [
        f"{number}" for number in range(LIMIT) if number
    ] + ["Of the function."]
'''
LINE_OF_THE_FAULT = 20
# Where docstrings stand is of the version: of the browser's Python and those near it.
pytestmark = pytest.mark.skipif(sys.version_info >= (3, 14), reason="other bytecode")


def module(**options):
    scope = {"__name__": "tried"}
    exec(slim(compile(SOURCE, "tried.py", "exec"), **options), scope)
    return scope


@pytest.mark.parametrize("lines", [True, False])
def test_what_it_does_stays_and_docstrings_go(lines):
    made = module(lines=lines)
    assert made["undocumented"]() == ["1", "2", "Of the function."]
    assert made["Kept"].words == "Of the class, in use."
    assert made["read_twice"]() == "It is its own answer."
    assert made["__doc__"] is made["Kept"].__doc__ is made["declared"].__doc__ is None


def test_a_docstring_that_is_read_stays_with_its_function_alone():
    made = module(lines=False, keep=("declared",))
    assert made["declared"].__doc__ == "Of the function."
    assert "Of what is in it." not in str(made["declared"].__code__.co_consts[1].co_consts)
    assert made["Kept"].__doc__ is None


@pytest.mark.parametrize(("lines", "line"), [(True, LINE_OF_THE_FAULT), (False, None)])
def test_an_error_still_says_where_it_was(lines, line):
    with pytest.raises(ZeroDivisionError) as raised:
        module(lines=lines)["declared"](1)
    frame = traceback.extract_tb(raised.value.__traceback__)[-1]
    assert (frame.filename, frame.name, frame.lineno) == ("tried.py", "inner", line)
    assert "inner" in "".join(traceback.format_exception(raised.value))


def test_every_line_of_a_long_module_is_kept():
    source = (
        "\n" * 200 + "def far():\n    return 1\n" + "\n" * 3_000 + "x = (\n 1 +\n far())\n" * 40
    )
    code = compile(source, "long.py", "exec")
    small = slim(code, lines=True)
    assert [line for *_, line in small.co_lines()] == [line for *_, line in code.co_lines()]
    assert {column for _, _, column, _ in small.co_positions()} == {None}


def test_a_pyc_keeps_its_head():
    head = bytes(range(16))
    made = slim_pyc(head + marshal.dumps(compile(SOURCE, "tried.py", "exec")), lines=True)
    assert made[:16] == head
    assert len(made) < 16 + len(marshal.dumps(compile(SOURCE, "tried.py", "exec")))
