"""The through dovetail of a drawer's back, and of boxes."""
