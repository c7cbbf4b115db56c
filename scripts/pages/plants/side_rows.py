"""Every row of the comparison, in the order of a plant's page."""

from scripts.pages.plants.side_by_side import ComparisonRow
from scripts.pages.plants.side_figures import FIGURES
from scripts.pages.plants.side_traits import TRAITS

ROWS: tuple[ComparisonRow, ...] = (*FIGURES, *TRAITS)  # the marks that tell plants apart come last
