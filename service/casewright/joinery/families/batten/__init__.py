"""Breadboard ends and battens: what keeps a slab flat and lets it move."""
