"""Small drawings of what one sees when something is wrong, one for each finding that can be drawn.

Each fills a box of 48 by 48 units, y downwards, and takes its colours from the style sheet's
variables, which a ``<use>`` inherits. What a drawing says stands beside it as the finding's label.
"""
