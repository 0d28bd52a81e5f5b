"""Coming in: setting up, signing in, invitations, the people of the shop, the demo."""
