"""The page that names a plant from what is seen."""
