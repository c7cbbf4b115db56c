"""From records and calculators to Markdown files; knows nothing of the site builder."""
