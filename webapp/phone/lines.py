"""Text written so that statements stand on lines of their own, as they do in the source."""


class Lines:
    """Rows that grow: what is put at a line of the source that is new begins a row."""

    def __init__(self) -> None:
        self.rows: list[str] = []
        self.number = 0

    def put(self, number: int, depth: int, text: str) -> None:
        """Write text that stands at a line of the source."""
        if self.rows and number <= self.number:
            self.add(text)
        else:
            self.rows.append("  " * depth + text)
            self.number = number

    def add(self, text: str) -> None:
        """Write text after what is on the last row."""
        self.rows[-1] += f" {text}"

    def text(self) -> str:
        """Give all that was written."""
        return "\n".join(self.rows) + "\n"
