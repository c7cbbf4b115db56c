"""Picking plants for a tank: one idea a module.

``record`` (the plants, read when first asked for), ``want`` (what is asked), ``tolerance`` and ``parts``
(how well one criterion fits), ``judge`` (score and hard reasons), ``law``, ``choose`` (the ranked list),
``uptake`` and ``together`` (a set that meets a nitrogen demand), ``words`` (what is said beside it).
"""
