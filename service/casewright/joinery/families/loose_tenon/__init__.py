"""Loose tenons that hold a board against the face of a case side."""
