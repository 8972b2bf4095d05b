"""Moisture in wood: where it comes to rest, and how fast it gets there."""
