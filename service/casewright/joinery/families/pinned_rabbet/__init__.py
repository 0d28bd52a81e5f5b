"""The rabbet in a front, in which the side lies, held by wooden pins through the side."""
