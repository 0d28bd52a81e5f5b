"""From parts and stock to a layout: what the wood itself asks, around the engines that fill rectangles."""
