"""What imports what, sizes, and names that stand twice: read from the source; nothing is run."""
