"""The book as open data: its records as JSON and CSV, and the Data Package that describes them."""
