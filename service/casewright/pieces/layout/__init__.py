"""What case and drawers are laid out by: openings, parts, the season, fittings."""
