"""Many cases in one page: what fails says in which it did."""

from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def case(name: str) -> Iterator[None]:
    """Put the case's name under whatever is raised in it."""
    try:
        yield
    except Exception as error:
        error.add_note(f"case: {name}")
        raise
