"""Pages: each reads the request, calls one thing, shows one template."""
