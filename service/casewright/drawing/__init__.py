"""Drawings to scale, as SVG, from a unit and its joints: values in, text out."""
