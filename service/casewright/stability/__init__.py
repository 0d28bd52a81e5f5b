"""Screens for tipping, sag and jamming: they rank a design and warn; they certify nothing."""
