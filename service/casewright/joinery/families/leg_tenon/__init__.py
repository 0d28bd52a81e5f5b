"""The tenons of aprons in a leg: set back from its face, haunched at its top, mitred where two meet."""
