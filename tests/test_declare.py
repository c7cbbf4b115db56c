"""A half-declared calculator is refused at import, in words that say what it lacks."""

from typing import Annotated, Literal, NamedTuple

import pytest

from calculators.core.declare import read_spec
from calculators.core.listing import load_all
from calculators.core.quantities import PH, Temperature
from calculators.core.quantity import Choices, Label, Possible, Valid
from calculators.core.read_fields import read_input


class Out(NamedTuple):
    ph: PH


def test_needs_a_docstring():
    def nothing(ph: PH = 7.0) -> Out: ...

    with pytest.raises(TypeError, match="needs a docstring"):
        read_spec(nothing, "Nothing", ())


def test_needs_a_default_for_each_input():
    def half(ph: PH, temperature_c: Temperature = 20.0) -> Out:
        """Do half."""

    with pytest.raises(TypeError, match="every input needs a default"):
        read_spec(half, "Half", ())


def test_returns_a_named_tuple():
    def bare(ph: PH = 7.0) -> float:
        """Do it."""

    with pytest.raises(TypeError, match="returns a NamedTuple"):
        read_spec(bare, "Bare", ())


def test_a_field_needs_a_quantity_or_a_label():
    with pytest.raises(TypeError, match="quantity of the vocabulary or a Label"):
        read_input("x", float)


def test_choices_need_as_many_words():
    with pytest.raises(TypeError, match="2 choices but words for 1"):
        read_input("x", Annotated[Literal["a", "b"], Label("X"), Choices(("A",))])


def test_a_later_mark_overrides_the_vocabulary():
    field = read_input(
        "temperature_c", Annotated[Temperature, Label("Tap"), Possible(1, 30), Valid(5, 25)], 20.0
    )
    assert (field.label, field.unit, field.low, field.high, field.valid) == (
        "Tap",
        "°C",
        1,
        30,
        (5, 25),
    )


def test_none_may_stand_inside_or_outside_the_annotation():
    assert read_input("ph", PH | None).nullable
    assert read_input("ph", Annotated[PH | None, Label("pH")]).nullable
    assert not read_input("ph", PH).nullable


def test_no_two_outputs_or_inputs_of_a_calculator_share_a_label():
    for spec in load_all().values():
        for fields in (spec.inputs, spec.outputs):
            labels = [field.label for field in fields]
            assert len(labels) == len(set(labels)), f"{spec.name}: {labels}"
