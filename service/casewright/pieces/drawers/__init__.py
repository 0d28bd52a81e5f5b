"""The drawers: their rules, sizes, joints, parts and checks."""
