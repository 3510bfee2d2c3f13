"""What a tool's help says: its fields, its cautions, and an example that fills the form."""

from typing import Any, TypeAlias

from webapp.core.address import work_address
from webapp.core.tool import Field, Tool
from webapp.core.view_project import back_to

View: TypeAlias = dict[str, Any]


def help_view(tool: Tool, project: dict[str, Any] | None) -> View:
    """Give a tool's help; its ways lead into the project that it was asked from."""
    frame = {"project": project["id"]} if project is not None else {}
    labels = {field.name: field.label for field in tool.fields}
    return {
        "title": tool.title,
        "about": tool.about,
        "project": back_to(project) if project is not None else None,
        "form": work_address(tool.name, frame),
        "words": list(tool.help),
        "fields": [_field_view(field) for field in tool.fields],
        "example": [{"label": labels.get(name, name), "text": text} for name, text in tool.example],
        "fill": work_address(tool.name, {**dict(tool.example), **frame}),
        "cautions": list(tool.cautions),
    }


def _field_view(field: Field) -> View:
    """Give a field's help in sentences: what it is for, what it takes, and what stands for a blank."""
    purpose = [field.help if field.help.endswith(".") else f"{field.help}."] if field.help else []
    return {"label": field.label, "words": " ".join(purpose + _takes(field) + _blank(field))}


def _takes(field: Field) -> list[str]:
    """Say what is typed where it is not one length alone."""
    listed = "; ".join([label for value, label in field.choices])
    if field.kind == "choice":
        return [f"One of these: {listed}."]
    rows = ["Rows of a name and a reading; a row without a name goes by its number."] if field.kind == "lines" else []
    return rows + ([f"There are words for it too: {listed}."] if listed else [])


def _blank(field: Field) -> list[str]:
    """Say what stands for a blank; a choice always stands at something."""
    if field.kind == "choice":
        return []
    shop = ["A project remembers it as the shop's."] if field.shop else []
    if field.required:
        return ["It cannot be left out."] + shop
    return _default(field) + shop


def _default(field: Field) -> list[str]:
    labels = dict(field.choices)
    said = [labels.get(text, text) for text in field.default]
    if not said:
        return []
    return [f"Left out, it is {said[0]}." if said[0] == said[1] else f"Left out, it is {said[0]}; metric, {said[1]}."]
