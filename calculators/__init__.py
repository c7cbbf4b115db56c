"""The calculators: plain functions, standard library only, one a file.

``core`` holds the declaration, the vocabulary of quantities and the one runner.
"""
