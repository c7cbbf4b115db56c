"""To how many digits after the point results are rounded, so that all machines give the same."""

RESULT_DIGITS = 6  # more says nothing, and the last digits differ between machines
COMPARED_DIGITS = (
    12  # of values that are compared: the last digits must not choose or rank otherwise
)
