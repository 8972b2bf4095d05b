"""Free movement: how far wood changes in size and shape when nothing stops it."""
