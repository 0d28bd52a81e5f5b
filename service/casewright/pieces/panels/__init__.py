"""Frame-and-panel work, wherever it stands: case sides, doors, panelled backs."""
