"""What every test may ask for."""

from tests.engine import browser, engine

__all__ = ["browser", "engine"]
