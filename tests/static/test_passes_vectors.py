import json

import pytest

from tests.both import in_browser, in_python
from tests.engine import Engine
from tests.vectors import cases
from tests.vectors.look import look
from webapp.core.passes import TOOL

VECTORS = cases("passes")
TITLES = [case["title"] for case in VECTORS]


@pytest.fixture(scope="module")
def answers(engine: Engine) -> dict[str, str]:
    return dict(zip(TITLES, in_browser(engine, TOOL, [case["typed"] for case in VECTORS]), strict=True))


@pytest.mark.browser
@pytest.mark.parametrize("case", VECTORS, ids=TITLES)
def test_a_vector_holds_in_the_browsers_engine(case, answers):
    found = json.loads(answers[case["title"]])
    if "errors" in case:
        assert found == {"errors": case["errors"]}
    else:
        assert {path: look(found["sheet"], path) for path in case["sheet"]} == case["sheet"]


@pytest.mark.browser
def test_each_vector_has_a_title_of_its_own_and_the_same_text_in_both_places(answers):
    assert len(answers) == len(VECTORS)
    assert list(answers.values()) == in_python(TOOL, [case["typed"] for case in VECTORS])
