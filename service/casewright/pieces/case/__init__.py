"""The case: its rules, plan, joints, parts and checks."""
