"""The housing of a divider or shelf in a case side, which is a dado: through, or stopped at the front."""
