"""Which way readings go: the slope between changes, and how sure it is."""
