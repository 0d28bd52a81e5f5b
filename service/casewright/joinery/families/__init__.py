"""The families of joints, a room each; `kinds()` finds them by the `KIND` of their `joint.py`."""
