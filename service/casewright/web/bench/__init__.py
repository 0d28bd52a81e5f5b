"""The bench: the drawer board, one drawer with its numbers, time."""
