"""What every test may ask for."""

from hypothesis import settings

from tests.engine import browser, engine

settings.register_profile("calm", deadline=None)  # a busy machine is no failure
settings.load_profile("calm")

__all__ = ["browser", "engine"]
