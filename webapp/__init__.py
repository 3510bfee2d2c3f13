"""Shoulderline: exact lengths and marks for joined furniture, at the bench."""

__version__ = "0.1.0"
