"""Where each part comes out of which board, sheet or length: layouts, their bounds, what is left."""
