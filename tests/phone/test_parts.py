"""The parts: what the walker takes, and what it refuses with file, line and what to write instead."""

import json

import pytest
from jinja2 import DictLoader, Environment, FileSystemLoader

from webapp.folders import TEMPLATES
from webapp.phone.parts import METHODS, PartsError, parts


def walked(source):
    return parts(Environment(loader=DictLoader({"parts.html": source}), autoescape=True))


def body(source):
    return walked("{% macro m(v) %}" + source + "{% endmacro %}")["m"]["body"]


def test_text_and_what_is_put():
    assert body("<p>{{ v }} and {{ v.mark.text }}</p>") == [
        "<p>",
        ["put", ["v"]],
        " and ",
        ["put", ["v", "mark", "text"]],
        "</p>",
    ]


def test_text_on_both_sides_of_a_comment_is_one_text():
    assert body("one{# nothing #}two") == ["onetwo"]


def test_elif_is_an_if_inside_the_else():
    assert body("{% if v.a %}A{% elif v.b %}B{% elif v.c %}C{% else %}D{% endif %}") == [
        ["if", ["v", "a"], ["A"], [["if", ["v", "b"], ["B"], [["if", ["v", "c"], ["C"], ["D"]]]]]]
    ]


def test_loops_hold_their_name():
    assert body("{% for s in v.slats %}{% for g in s.gaps %}{{ g.at }}{{ s.at }}{% endfor %}{% endfor %}") == [
        ["for", "s", ["v", "slats"], [["for", "g", ["s", "gaps"], [["put", ["g", "at"]], ["put", ["s", "at"]]]]]]
    ]


def test_macros_call_each_other_wherever_they_stand():
    tree = walked("{% macro a(v) %}{{ b(v.x, v) }}{% endmacro %}\n{% macro b(x, y) %}{{ x }}{% endmacro %}")
    assert tree["a"]["body"] == [["call", "b", ["v", "x"], ["v"]]]
    assert tree["b"] == {"args": ["x", "y"], "body": [["put", ["x"]]]}


@pytest.mark.parametrize(
    ("source", "instead"),
    [
        ("{{ v.a|upper }}", "finished text"),
        ("{{ 'A' }}", "text of the template"),
        ("{{ 1 }}", "text of the template"),
        ("{{ v['a'] }}", "write `a.b`"),
        ("{{ v.a ~ v.b }}", "side by side"),
        ("{{ v.a if v.b else v.c }}", "{% if b %}"),
        ("{{ v.a + v.b }}", "parts know"),
        ("{{ [v.a] }}", "let the view hold it"),
        ("{% if not v.a %}x{% endif %}", "{% else %}"),
        ("{% if v.a and v.b %}x{% endif %}", "inside the other"),
        ("{% if v.a or v.b %}x{% endif %}", "a yes or no"),
        ("{% if v.a == v.b %}x{% endif %}", "a yes or no"),
        ("{% if v.a is defined %}x{% endif %}", "a yes or no"),
        ("{% for a in v.b %}x{% else %}y{% endfor %}", "a loop is plain"),
        ("{% for a in v.b if a.c %}x{% endfor %}", "a loop is plain"),
        ("{% for a in v.b recursive %}x{% endfor %}", "a loop is plain"),
        ("{% for a, b in v.c %}x{% endfor %}", "list of dicts"),
        ("{% for a in v.b %}{{ loop.index }}{% endfor %}", "loop is no argument"),
        ("{% for a in v.b %}{% endfor %}{{ a }}", "a is no argument"),
        ("{{ request.path }}", "request is no argument"),
        ("{{ caller }}", "caller is no argument"),
        ("{{ url_for('home') }}", "no macro of this file"),
        ("{{ v.draw() }}", "no macro of this file"),
        ("{{ m() }}", "m takes 1, not 0"),
        ("{{ m(v, v) }}", "m takes 1, not 2"),
        ("{{ m(v='x') }}", "by name or with a star"),
        ("{{ m(*v) }}", "by name or with a star"),
        ("{{ m('x') }}", "text of the template"),
        ("{% set a = v %}", "let the view hold it"),
        ("{% set a %}x{% endset %}", "let the view hold it"),
        ("{% include 'x.html' %}", "call a macro"),
        ("{% import 'x.html' as x %}", "call a macro"),
        ("{% with a = v %}{{ a }}{% endwith %}", "hand the part to a macro"),
        ("{% call m(v) %}x{% endcall %}", "{{ name(a.b) }}"),
        ("{% filter upper %}x{% endfilter %}", "finished text"),
        ("{% macro inner(v) %}{% endmacro %}", "beside the others"),
    ],
)
def test_what_is_outside_stops_with_its_line_and_what_to_write(source, instead):
    with pytest.raises(PartsError) as caught:
        body("\n\n" + source)
    assert caught.value.line == 3
    assert instead in caught.value.reason
    assert str(caught.value).startswith("parts.html:3: ")


@pytest.mark.parametrize("name", sorted(METHODS))
def test_no_name_of_a_dicts_method(name):
    """Jinja would put the method, the phone the value."""
    with pytest.raises(PartsError, match=f".{name} is a method of every dict"):
        body("{{ v." + name + " }}")
    assert {"items", "keys", "values", "get", "pop", "copy", "update", "clear", "setdefault"} <= METHODS


@pytest.mark.parametrize(
    ("source", "reason"),
    [
        ("text", "holds macros and nothing else"),
        ("{% if x %}{% endif %}", "holds macros and nothing else"),
        ("{% extends 'x.html' %}", "holds macros and nothing else"),
        ("{% macro a(v) %}{% endmacro %}{% macro a(v) %}{% endmacro %}", "a second macro called a"),
        ("{% macro a(v, w='x') %}{% endmacro %}", "a default"),
    ],
)
def test_the_file_holds_macros_alone(source, reason):
    with pytest.raises(PartsError, match=reason):
        walked(source)


def test_a_name_of_the_scope_hides_no_macro():
    with pytest.raises(PartsError, match="no macro of this file"):
        walked("{% macro a(b) %}{{ b(a) }}{% endmacro %}{% macro b(v) %}{% endmacro %}")


def test_the_error_names_the_file_where_it_lies():
    environment = Environment(loader=FileSystemLoader(TEMPLATES), autoescape=True)
    with pytest.raises(PartsError, match=r"templates/frame\.html:\d+: "):
        parts(environment, "frame.html")


def test_the_projects_own_parts_are_inside_and_plain_json():
    environment = Environment(loader=FileSystemLoader(TEMPLATES), autoescape=True, trim_blocks=True, lstrip_blocks=True)
    tree = parts(environment)
    assert json.loads(json.dumps(tree)) == tree
    assert {"home", "project", "tool", "sheet", "reading"} <= set(tree)
