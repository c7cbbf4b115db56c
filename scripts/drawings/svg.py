"""Writes shapes as SVG with few characters: relative coordinates, rounded where nobody can see it."""

from collections.abc import Iterable

from scripts.drawings.geometry import Affine, Path, Point, controls


def number(value: float, digits: int) -> str:
    """A number without idle zeros."""
    text = f"{value:.{digits}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    text = "0" if text == "-0" else text
    return text.replace("0.", ".", 1) if text.startswith(("0.", "-0.")) else text


def joined(values: Iterable[float], digits: int) -> str:
    """Numbers in a row; a minus sign is separator enough."""
    text = ""
    for value in values:
        shown = number(value, digits)
        text += shown if not text or shown.startswith("-") else f" {shown}"
    return text


class Pen:
    """Follows the rounded position, so that rounding errors do not add up along a path."""

    def __init__(self, digits: int) -> None:
        self.digits, self.here, self.text = digits, (0.0, 0.0), ""

    def move(self, letter: str, points: Iterable[Point]) -> None:
        """One command with coordinates relative to where the pen is."""
        x, y = self.here
        flat = []
        for point in points:
            flat += [round(point[0] - x, self.digits), round(point[1] - y, self.digits)]
        self.here = (x + flat[-2], y + flat[-1])
        self.text += letter + joined(flat, self.digits)

    def path(self, path: Path) -> None:
        """One path."""
        start = path.runs[0].points[0]
        self.here = (round(start[0], self.digits), round(start[1], self.digits))
        self.text += "M" + joined(self.here, self.digits)
        for run in path.runs:
            if run.smooth and len(run.points) > 2:
                for i, (first, second, end) in enumerate(controls(run.points)):
                    # The curve is smooth, so that a later piece's first control need not be said.
                    self.move(*(("s", (second, end)) if i else ("c", (first, second, end))))
            else:
                for point in run.points[1:]:
                    self.move("l", [point])
        if path.closed:
            self.text += "z"


def path_data(paths: Iterable[Path], digits: int) -> str:
    """The ``d`` of some paths, whose y already points down."""
    pen = Pen(digits)
    for path in paths:
        pen.path(path)
    return pen.text


def matrix(affine: Affine, digits: int) -> str:
    """A ``transform``; the four factors need more digits than the place."""
    if affine[:4] == (1.0, 0.0, 0.0, 1.0):
        return f"translate({joined(affine[4:], digits)})"
    return f"matrix({joined(affine[:4], 2)} {joined(affine[4:], digits)})"
