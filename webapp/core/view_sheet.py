"""What a sheet says on a screen: one shape for every tool."""

from typing import Any

from webapp.core.drawing import mark_view, strip_view


def sheet_view(sheet: dict[str, Any]) -> dict[str, Any]:
    """Give a sheet as text, marks and strips; nothing is worked here."""
    unit = "mm" if sheet["unit"] == "mm" else ""
    strips = [strip_view(strip) for strip in sheet.get("strips", [])]
    return {
        "answer": _value_view(sheet["answer"], unit),
        "exactly": _exactly(sheet["answer"]["value"]),
        "strip": strips[0] if strips else None,
        "figures": [_value_view(figure, unit) for figure in sheet.get("figures", [])],
        "marks": [_place_view(place) for place in sheet.get("marks", [])],
        "steps": [_value_view(step, unit) for step in sheet.get("steps", [])],
        "others": strips[1:],
        "sums": sheet.get("sums", []),
        "cautions": sheet.get("cautions", []),
        "notes": sheet.get("notes", []),
        "unit": sheet["unit"],
        "graduation": sheet["graduation"],
    }


def _value_view(item: dict[str, Any], unit: str) -> dict[str, Any]:
    """Give an answer, a figure or a step: its label with a mark, or with words where it is no length."""
    value = item.get("value", "")
    drawn = isinstance(value, (dict, int))  # a count is drawn as a number too
    text = value["mark"] if isinstance(value, dict) else str(value)
    return {
        "key": item["key"],
        "label": item["label"],
        "mark": mark_view(text, unit if isinstance(value, dict) else "") if drawn else None,
        "words": "" if drawn else text,
    }


def _place_view(place: dict[str, Any]) -> dict[str, Any]:
    return {"key": place["key"], "label": place["label"], "mark": mark_view(place["at"]["mark"], "")}


def _exactly(value: Any) -> str:
    """Say the exact value behind a mark, with its millimetres, or nothing where the answer is no length."""
    if isinstance(value, dict):
        return f"exactly {value['inches']} in, {value['mm']} mm"
    return ""
