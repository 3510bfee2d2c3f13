"""A sheet as plain text, for the command line."""

from typing import Any


def sheet_text(sheet: dict[str, Any]) -> str:
    """Write a sheet: the answer first, then figures, marks, steps, sums, cautions and notes."""
    lines = [line(sheet["answer"])]
    for part, words in (("figures", ""), ("marks", "Marks"), ("steps", "Steps")):
        lines += headed(words, [line(item) for item in sheet.get(part, [])])
    for part in ("sums", "cautions", "notes"):
        lines += headed(part.capitalize(), sheet.get(part, []))
    return "\n".join(lines)


def headed(words: str, lines: list[str]) -> list[str]:
    """Put a heading over lines, where there are any."""
    heading = ["", words] if words else []
    return [*heading, *(f"  {text}" if words else text for text in lines)] if lines else []


def line(item: dict[str, Any]) -> str:
    """Write one labelled value."""
    value = item.get("at", item.get("value", ""))
    return f"{item['label']}: {value['mark'] if isinstance(value, dict) else value}"
