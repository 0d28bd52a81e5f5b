"""The demo: an invented shop, made by the real verbs at moments past, and its removal."""
