"""Pages of plants: one each, the table, the comparison, trade names, growth against light."""
