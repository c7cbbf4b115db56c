"""Plants for a tank, with reasons."""
