"""What runs at build time and in tests; nothing here ships to the browser."""
