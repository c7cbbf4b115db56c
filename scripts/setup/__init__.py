"""Sets up a fresh machine. Standard library only, but for what says otherwise."""
