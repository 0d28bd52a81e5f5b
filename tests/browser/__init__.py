"""Pages as people use them: keyboard, no script, phone, print, and what axe finds."""
