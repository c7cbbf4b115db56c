"""The browser's Python: fetched by lock file, trimmed to what the calculators import, byte-compiled."""
