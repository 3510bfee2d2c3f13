"""Hands the core, the markup and the shells to the phone."""
