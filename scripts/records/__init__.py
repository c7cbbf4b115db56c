"""The records: their models, loading with line numbers, and checks."""
