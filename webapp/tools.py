"""The tools there are: each module of the core that declares a TOOL."""

from importlib import import_module
from pkgutil import iter_modules

from webapp import core
from webapp.core.tool import Tool


def found() -> dict[str, Tool]:
    """Return the tools by name, in the order of their modules' names."""
    names = sorted(module.name for module in iter_modules(core.__path__))
    modules = [import_module(f"{core.__name__}.{name}") for name in names]
    declared = [module.TOOL for module in modules if hasattr(module, "TOOL")]
    return {tool.name: tool for tool in declared}


TOOLS = found()
