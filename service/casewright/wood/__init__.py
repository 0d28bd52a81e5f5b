"""Wood as a material: species, moisture and movement, thickness classes, board measure, grades, sheets."""
