"""Pages of calculators and their forms, from the declarations."""
