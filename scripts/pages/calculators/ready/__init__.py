"""Ready values: tables in the pages of the sums asked most, for where Python cannot start, and on paper."""
