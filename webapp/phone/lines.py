"""Text written so that each statement stands on the line it has in its source."""


class Lines:
    """Rows that grow: what is put at a line stands there, or after what is on the last row already."""

    def __init__(self) -> None:
        self.rows = [""]

    def put(self, number: int, depth: int, text: str) -> None:
        """Write text at a line of the source."""
        self.rows += [""] * (number - len(self.rows))
        self.add(text, "  " * depth)

    def add(self, text: str, indent: str = "") -> None:
        """Write text after what is on the last row."""
        last = self.rows[-1]
        self.rows[-1] = f"{last} {text}" if last else indent + text

    def text(self) -> str:
        """Give all that was written."""
        return "\n".join(self.rows) + "\n"
