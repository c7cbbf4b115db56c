"""The place where the page offers to log what was measured, for the tank that the keeper stands at."""

from calculators.core.declare import Spec
from calculators.core.paint.element import NOTHING, Html, element
from calculators.core.run import Computed


def to_log(spec: Spec, computed: Computed) -> Html:
    """The entry as data for the page's script, which knows the tank; nothing where there is none."""
    entry = computed.answer["outputs"][spec.logs.output] if spec.logs else None
    if not spec.logs or not entry:
        return NOTHING
    attributes = {
        "class": "to-log",
        "id": "to-log",
        "data-kind": spec.logs.kind,
        "data-what": spec.logs.what,
        **{f"data-{key}": str(value) for key, value in entry.items()},
    }
    return element("div", attributes)
