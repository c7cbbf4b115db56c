"""What the shelf needs of the build: its table of fields, its schema, its demo tanks."""
