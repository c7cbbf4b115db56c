"""Which way readings go between water changes."""
