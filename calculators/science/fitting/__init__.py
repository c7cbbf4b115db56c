"""The nitrogen engine fitted to what a keeper read."""
