"""What the law lists of the records say of a plant."""
