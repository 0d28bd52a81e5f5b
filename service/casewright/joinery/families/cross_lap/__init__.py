"""Two strips that cross each other, each notched for half of its depth."""
