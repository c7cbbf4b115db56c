"""Least squares of a few parameters, in plain Python: normal equations with beliefs as readings."""

from collections.abc import Sequence

Matrix = list[list[float]]


def normal(
    rows: Sequence[Sequence[float]], weights: Sequence[float], beliefs: Sequence[float]
) -> Matrix:
    """Weighted sum of outer products of the rows, with the beliefs on the diagonal.

    There is a row for each reading and in it a slope for each parameter; ``weights`` are one over a
    reading's variance, ``beliefs`` one over a parameter's, in their units squared.
    """
    size = len(beliefs)
    return [
        [
            sum(w * row[i] * row[j] for row, w in zip(rows, weights, strict=True))
            + (beliefs[i] if i == j else 0.0)
            for j in range(size)
        ]
        for i in range(size)
    ]


def inverse(matrix: Matrix) -> Matrix:
    """The inverse of a small positive definite matrix, by Gauss and Jordan."""
    size = len(matrix)
    work = [[*row, *(1.0 if i == j else 0.0 for j in range(size))] for i, row in enumerate(matrix)]
    for i in range(size):
        pivot = max(range(i, size), key=lambda r: abs(work[r][i]))
        work[i], work[pivot] = work[pivot], work[i]
        scale = work[i][i]
        work[i] = [value / scale for value in work[i]]
        for r in range(size):
            if r != i and work[r][i]:
                by = work[r][i]
                work[r] = [a - by * b for a, b in zip(work[r], work[i], strict=True)]
    return [row[size:] for row in work]


def covariance(
    rows: Sequence[Sequence[float]], weights: Sequence[float], beliefs: Sequence[float]
) -> Matrix:
    """Covariance of the parameters: the inverse of the normal equations.

    Its ``rows``, ``weights``, ``beliefs`` and units are those of ``normal``.
    """
    return inverse(normal(rows, weights, beliefs))


def solve_linear(
    rows: Sequence[Sequence[float]],
    weights: Sequence[float],
    misses: Sequence[float],
    beliefs: Sequence[float],
    now: Sequence[float],
) -> list[float]:
    """The step of each parameter that fits the misses best; beliefs pull back to zero.

    There is a miss for each of the ``rows``; where the parameters are ``now`` and the step are in their
    own units. What ``weights`` and ``beliefs`` are, ``normal`` says.
    """
    right = [
        sum(w * row[i] * miss for row, w, miss in zip(rows, weights, misses, strict=True))
        - beliefs[i] * now[i]
        for i in range(len(beliefs))
    ]
    back = inverse(normal(rows, weights, beliefs))
    return [sum(a * b for a, b in zip(row, right, strict=True)) for row in back]


def spread_of(row: Sequence[float], spread: Matrix) -> float:
    """Variance of a value whose slopes by the parameters are the row.

    It is in the square of the value's unit.
    """
    return sum(a * b * spread[i][j] for i, a in enumerate(row) for j, b in enumerate(row))
