"""Weighing uncertain evidence: Bayes' rule over what a thing may be, and what is worth asking next."""
