"""What scripts/bench.py measures, one file a question."""
