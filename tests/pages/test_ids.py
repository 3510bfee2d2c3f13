"""No two things of a page have the same id: fields are named by the tools, and a label or a script finds but one."""

from collections import Counter
from html.parser import HTMLParser

import pytest
from flask.testing import FlaskClient

from webapp.core.address import work_address
from webapp.tools import TOOLS


class Ids(HTMLParser):
    """Gathers the ids of a page."""

    def __init__(self) -> None:
        super().__init__()
        self.found: Counter[str] = Counter()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.update(value for name, value in attrs if name == "id" and value)


@pytest.mark.parametrize("name", TOOLS)
def test_every_id_of_a_tools_page_stands_once(client: FlaskClient, name: str) -> None:
    answer = client.get(work_address(name, dict(TOOLS[name].example)))
    ids = Ids()
    ids.feed(answer.text)
    assert answer.status_code == 200
    assert {field.name for field in TOOLS[name].fields} <= set(ids.found)
    assert [found for found, times in ids.found.items() if times > 1] == []
