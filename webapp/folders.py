"""Where templates and static files lie: inside the package when installed, beside it in a checkout."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def _found(name: str) -> Path:
    inside = _PACKAGE / name
    return inside if inside.is_dir() else _PACKAGE.parent / name


CORE = _PACKAGE / "core"
TEMPLATES = _found("templates")
STATIC = _found("static")
