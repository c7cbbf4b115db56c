"""Which plant it is, from what is seen: a ranking, how sure, and what to look at next."""
