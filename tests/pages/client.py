"""The program asked as a browser asks it: the headers, the token, and a form filled in and sent."""

from html.parser import HTMLParser
from typing import Any

from flask.testing import FlaskClient
from werkzeug.test import TestResponse

OWN = {"Sec-Fetch-Site": "same-origin", "Sec-Fetch-Mode": "navigate", "Sec-Fetch-Dest": "document"}


class Forms(HTMLParser):
    """Each form of a page by its id: its address, and what its fields hold."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: dict[str, dict[str, Any]] = {}
        self.current: dict[str, Any] | None = None
        self.area = ""  # the textarea that is open
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        got = dict(attrs)
        if tag == "form":
            self.current = {"action": got.get("action"), "fields": {}}
            self.found[got.get("id") or ""] = self.current
        elif self.current is not None and tag in ("input", "select") and got.get("name"):
            self.current["fields"][got["name"]] = got.get("value") or ""
        elif self.current is not None and tag == "textarea":
            self.area = got.get("name") or ""
            self.current["fields"][self.area] = ""

    def handle_data(self, data: str) -> None:
        if self.current is not None and self.area:
            self.current["fields"][self.area] += data

    def handle_endtag(self, tag: str) -> None:
        if tag == "textarea" and self.current is not None:
            text = self.current["fields"][self.area]
            self.current["fields"][self.area] = text[1:] if text[:1] == "\n" else text  # as a browser takes it
            self.area = ""
        if tag == "form":
            self.current = None


def forms(response: TestResponse) -> dict[str, dict[str, Any]]:
    """Return a page's forms."""
    return Forms(response.text).found


def send(client: FlaskClient, page: str, form: str, **typed: str) -> TestResponse:
    """Open a page, fill one of its forms in, and send it."""
    found = forms(client.get(page, headers=OWN))[form]
    return client.post(found["action"], data=found["fields"] | typed, headers=OWN)


def start_project(client: FlaskClient, **typed: str) -> str:
    """Start a project by its form and return its address."""
    response = send(client, "/", "project", **{"name": "Bench in ash", "unit": "in", "graduation": "1/32", **typed})
    assert response.status_code == 303, response.text
    return response.headers["Location"]
