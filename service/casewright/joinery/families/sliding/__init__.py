"""The sliding dovetail of a divider into a case side."""
