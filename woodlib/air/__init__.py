"""Air: its moisture, a year of it indoors, and where that year comes from."""
