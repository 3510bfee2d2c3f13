from webapp.core.sentence import sentence


def test_parts_are_put_in_as_they_are():
    assert sentence("{a} of {b}, {a}.", {"a": "{b}", "b": "}{"}) == "{b} of }{, {b}."
    assert sentence("Nothing.", {}) == "Nothing."
