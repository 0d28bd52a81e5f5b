"""The half-blind dovetail of a drawer's front, with a registration rabbet in the side."""
