"""Butt hinges let into the edge of a door and into the case: their places, and the gains for their leaves."""
