"""What ``dosing`` needs: salts, labels, bottles, the level that a schedule settles at, cautions."""
