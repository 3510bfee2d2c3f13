"""The settings that the tests of the core read and mark by."""

from typing import Any

from webapp.core.setting import GRADUATIONS, UNITS, Setting, setting
from webapp.units import FACTORS

SETTINGS = [setting(unit, graduation, FACTORS) for unit in UNITS for graduation in GRADUATIONS[unit]]


def setting_of(case: dict[str, Any]) -> Setting:
    """Make the setting that a case names."""
    return setting(case.get("unit", ""), case.get("graduation", ""), FACTORS)
