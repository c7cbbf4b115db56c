"""Pages of law lists, of the places where they hold, and of sources."""
