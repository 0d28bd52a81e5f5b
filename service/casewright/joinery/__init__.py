"""Joints: layouts, gauges, dividers, checks, the choice of a layout; one module for each family of joint."""
