"""The dovetail of wide case boards: narrower tails at the edges, with a lap or through."""
