"""The box joint: square fingers all alike, cut by machine against a key, glued on their long-grain faces."""
