"""Pictures: the scene, the palette, SVG, print, and wood drawn from its real geometry."""
