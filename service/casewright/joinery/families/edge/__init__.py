"""Boards joined along their edges without glue: shiplap, and tongue and groove."""
