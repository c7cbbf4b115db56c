"""What is wrong, how sure that is, and what to look at next."""
