"""Nitrogen in a planted tank: the model, its constants, and how it is run."""
