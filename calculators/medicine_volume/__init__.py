"""The dose of a label for the water that is really there."""
