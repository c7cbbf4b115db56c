"""What the shelf's pages, file and papers ask of Python beside calculators; no calculator imports it."""
