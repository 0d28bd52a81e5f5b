"""The lock rabbet: a groove in the side, and a tongue on the front that goes into it."""
