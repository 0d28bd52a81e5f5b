"""The piece as a whole: `construct()`, its masses, surfaces, stand and checks, and how it is measured."""
