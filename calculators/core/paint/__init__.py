"""An answer as a page or a terminal shows it."""
