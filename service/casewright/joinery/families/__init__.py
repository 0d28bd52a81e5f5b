"""The families of joints, a module each; `kinds()` finds them by their `KIND`."""
