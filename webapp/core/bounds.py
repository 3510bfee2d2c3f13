"""Bounds along a part, and the spans of a strip that they make."""

from fractions import Fraction
from typing import TypeAlias

from webapp.core.mark import length
from webapp.core.setting import Setting
from webapp.core.sheet import Part, span

Bound: TypeAlias = tuple[Fraction, Fraction, str, str]  # from and to, in inches; label; kind


def laid(bounds: list[Bound], how: Setting) -> list[Part]:
    """Return the spans in their order; one that has no length is left out."""
    return [span(length(start, how), length(end, how), name, kind) for start, end, name, kind in bounds if start < end]
