"""The nitrogen engine: from the feed to the plants, week by week.

``equations.py`` lists every rate with its equation and source; ``right_side.py`` puts them together,
``ode.py`` solves them, ``budget.py`` checks that no nitrogen is made or lost on the way.
"""
