"""Doors: their leaves, the parts of each, hinges, and how they hang and move."""
