"""Pieces of the core's subset, each run in CPython and, translated, in the browser's engine."""

BIG = "9007199254740993"

# Each is what a function of its own returns.
EXPRESSIONS = f"""
7 // 2
-7 // 2
7 // -2
-7 // -2
0 // -5
7 % 3
-7 % 3
7 % -3
-7 % -3
-6 % 3
divmod(-7, 2)
divmod(7, -2)
divmod(Fraction(-7, 2), Fraction(2, 3))
divmod(True, 2)
1 // 0
1 % 0
Fraction(1, 2) // 0
Fraction(1, 2) % 0
Fraction(1, 2) / 0
Fraction(1, 0)
Fraction(Fraction(1, 2), 0)
{BIG} + 1
{BIG} * {BIG}
-{BIG} // 7
{BIG} * {BIG} // -{BIG}
{BIG} % 10
-{BIG} % 10
{BIG} % -10
9007199254740991 + 1
9007199254740991 + 1 - 1
-9007199254740991 - 2
9007199254740992 - 1
3037000500 * 3037000500
94906267 * 94906267
94906265 * 94906265
{BIG} == {BIG} + 0
{BIG} - 1 == 9007199254740992
{BIG} > 9007199254740992
{BIG} > 1
1 < {BIG}
{BIG} // {BIG}
str({BIG} * 10)
int("{BIG}{BIG}")
int("-{BIG}{BIG}")
int("+12")
int("-007")
int("0")
int("")
int("12a")
int("1.5")
int(".")
int(Fraction(7, 2))
int(Fraction(-7, 2))
int(Fraction(-4, 2))
int(True)
int(None)
int([])
abs(-5)
abs(True)
abs(Fraction(-1, 3))
abs("a")
-True
-(-5)
-Fraction(1, 2)
-"a"
True + True
True * 3
sum([True, True, 2])
1 + Fraction(1, 2)
Fraction(1, 2) + 1
1 - Fraction(1, 2)
2 * Fraction(1, 2)
Fraction(1, 2) * True
1 / Fraction(1, 2)
Fraction(3, 4) / 3
Fraction(6, 4)
Fraction(-6, -4)
Fraction(6, -4)
Fraction(0, -5)
Fraction(True, 2)
Fraction(Fraction(1, 2), Fraction(3, 4))
Fraction(7, 2) // 2
Fraction(-7, 2) // 2
Fraction(7, 2) % 2
Fraction(-7, 2) % 2
7 % Fraction(3, 2)
7 // Fraction(3, 2)
Fraction({BIG}, 3) * 3
Fraction({BIG}, 3) + Fraction(1, {BIG})
Fraction({BIG} * {BIG}, {BIG})
Fraction(1, 3).numerator + Fraction(1, 3).denominator
Fraction(4, 2).denominator
Fraction(4, 2) == 2
2 == Fraction(4, 2)
Fraction(1, 2) == "1/2"
Fraction(1, 1) == True
Fraction(1, 2) != 1
Fraction(1, 2) < 1
1 > Fraction(1, 2)
Fraction(1, 3) < Fraction(1, 2)
Fraction({BIG}, 2) > {BIG}
True < Fraction(3, 2)
Fraction(1, 2) < "a"
Fraction(1, 2) + "a"
"a" + Fraction(1, 2)
Fraction(1, 2) == None
1 == True
0 == False
1 == "1"
None == 0
None == None
"" == 0
[] == 0
[1] == (1,)
(1,) == [1]
(1, 2) == (1, 2)
[1, [2]] == [1, [2]]
[1, Fraction(1, 2)] == [True, Fraction(2, 4)]
[1, 2] != [1, 2, 3]
{{"a": 1, "b": 2}} == {{"b": 2, "a": 1}}
{{"a": 1}} == {{"a": 1, "b": 2}}
{{"a": 1}} == {{"a": True}}
{{"a": []}} == {{"a": ()}}
{{1: "a"}} == {{True: "a"}}
[] == {{}}
1 < "a"
"a" < 1
None < 1
[1] < (1,)
{{"a": 1}} < {{"a": 2}}
[1] < None
True < 2
[1, 2] < [1, 3]
[1, 2] < [1, 2, 0]
[1, 2] <= [1, 2]
[2] > [1, 5]
(1, "a") < (1, "b")
[1, "a"] < [2, 5]
[1, "a"] < [1, 5]
[[1], 2] >= [[1], 1]
"a" < "b"
"a" < "aa"
"B" < "a"
"" < "a"
"\\uffff" < "\\U0001f600"
"\\U0001f600" < "\\uffff"
"\\ud7ff" < "\\U00010000"
"\\ue000" < "\\U00010000"
"\\U0001f600" < "\\U0001f601"
"a\\U0001f600" > "a\\ufb00"
1 < 2 < 3
1 < 3 < 2
3 > 2 >= 2 == 2
1 < 2 > 1
1 in [1, 2]
True in [1, 2]
Fraction(2) in [1, 2]
"a" in ["a"]
[1] in [[1]]
(1,) in [[1]]
"b" in "abc"
"" in "abc"
"bc" in "abc"
"d" not in "abc"
1 in "abc"
"a" in {{"a": 1}}
1 in {{"a": 1}}
True in {{1: 1}}
[] in {{"a": 1}}
2 in (1, 2)
1 in 5
"a" in None
1 in {{"a": 1}}.values()
"a" in {{"a": 1}}.keys()
not []
not ()
not {{}}
not ""
not 0
not Fraction(0)
not Fraction(1, 2)
not None
not [0]
not " "
bool([])
bool({{"a": 0}})
bool(Fraction(0, 5))
[] or "x"
0 or None
"a" or 1 // 0
[] and 1 // 0
"a" and 0
1 and 2 and 3
1 and 0 and 3
0 or "" or {{}}
[] or () or "z"
(1 < 2) and "yes"
(1 > 2) and "yes"
(1 > 2) or "no"
not (1 and [])
"yes" if [] else "no"
"yes" if {{"a": 1}} else "no"
[1, 2, 3][-1]
[1, 2, 3][-3]
[1, 2, 3][-4]
[1, 2, 3][3]
[1, 2, 3][True]
[][0]
(1, 2)[-1]
(1, 2)[2]
"abc"[-1]
"abc"[3]
"a\\U0001f600b"[1]
"a\\U0001f600b"[2]
"a\\U0001f600b"[-1]
[1, 2]["a"]
[1, 2][{BIG}]
5[0]
None["a"]
[1, 2, 3][1:]
[1, 2, 3][:-1]
[1, 2, 3][-2:]
[1, 2, 3][5:]
[1, 2, 3][-9:2]
[1, 2, 3][2:1]
[1, 2, 3][:]
[1, 2, 3][None:2]
[1, 2, 3][0:{BIG}]
[1, 2, 3][True:]
(1, 2, 3)[1:]
(1, 2, 3)[5:]
"abcd"[1:3]
"abcd"[-3:-1]
"abcd"[:99]
"a\\U0001f600bc"[1:3]
"a\\U0001f600bc"[-3:]
[1, 2]["a":]
5[1:]
{{"a": 1}}["a"]
{{"a": 1}}["b"]
{{1: "x"}}[True]
{{True: "x"}}[1]
{{None: 1}}[None]
{{"a": 1}}[[]]
{{[]: 1}}
{{"b": 1, "a": 2, "b": 3}}
{{1: "a", True: "b"}}
{{"a": 1, **{{"b": 2, "a": 3}}}}
{{**{{"a": 1}}, "a": 2}}
{{"10": 1, "9": 2, "a": 3}}
[*[1, 2], *(3, 4), 5]
(*[1], 2)
[*"ab"]
[*{{"a": 1}}]
[1] + [2]
(1,) + (2,)
[1] + (2,)
[1] + 1
"a" + "b"
"a" + 1
1 + "a"
None + 1
1 - "a"
"a" - "b"
[1] * 2
2 * [1]
(1,) * 2
"ab" * 3
3 * "ab"
"ab" * -1
[1] * 0
[[1]] * 2
"a" * "b"
[1] * [2]
"a" * True
len("abc")
len("a\\U0001f600")
len([1, 2])
len({{"a": 1}})
len((1,))
len(5)
len(None)
list(range(3))
list(range(2, 5))
list(range(5, 2))
list(range(5, 0, -2))
list(range(0))
list(range(0, 10, 0))
list(range("a"))
list(range(True))
list(enumerate("ab"))
list(enumerate(["a"], 5))
list(enumerate(["a"], start=1))
list(zip([1, 2], "ab"))
list(zip([1, 2, 3], "ab"))
list(zip([1, 2], "ab", strict=True))
list(zip([1, 2, 3], "ab", strict=True))
list(zip([1], [2], [3], strict=False))
list(zip(*[[1, 2], [3, 4]]))
list(reversed([1, 2]))
list(reversed("ab"))
list(reversed(range(3)))
list("a\\U0001f600")
list({{"a": 1, "b": 2}})
list({{"a": 1}}.items())
list(5)
list(None)
tuple([1, 2])
tuple("ab")
tuple()
list()
dict()
dict([("a", 1), ["b", 2]])
dict({{"a": 1}})
dict([(1, 2, 3)])
dict(zip("ab", [1, 2]))
dict([5])
sorted([3, 1, 2])
sorted([3, 1, 2], reverse=True)
sorted(["b", "a", "B"])
sorted([(2, "a"), (1, "b"), (1, "a")])
sorted([[2, "x"], [1, "y"], [2, "a"]], key=lambda p: p[0])
sorted([[2, "x"], [1, "y"], [2, "a"]], key=lambda p: p[0], reverse=True)
sorted("bca")
sorted({{"b": 1, "a": 2}})
sorted([Fraction(1, 2), 0, 1, Fraction(1, 3)])
sorted([1, "a"])
sorted([None, None])
sorted([10, 9, 2, 33, 1])
sorted(["\\uffff", "\\U0001f600"])
sorted(["bb", "a", "ccc"], key=len)
min([3, 1, 2])
min(3, 1, 2)
max(3, 1, 2)
max([1, True])
max([True, 1])
min([1, Fraction(1, 2)])
min([])
max([], default=5)
min([], default=None)
max([[1, "a"], [2, "b"], [2, "c"]], key=lambda p: p[0])
min(["bb", "a"], key=len)
min("bca")
min(1, "a")
min([1], default=0)
max({{"a": 1, "b": 2}})
max(x * x for x in [1, -3])
sum([1, 2, 3])
sum([Fraction(1, 2), Fraction(1, 3)])
sum([], 5)
sum([])
sum([[1], [2]], [])
sum(["a"])
sum(x for x in range(5))
sum([1], start=10)
sum([{BIG}, {BIG}])
all([])
any([])
all([1, []])
any([0, "", [1]])
all(x > 0 for x in [1, 2])
any(1 // x for x in [1, 0])
all(1 // x for x in [2, 0])
any(x for x in [0, 0])
ord("a")
ord("\\U0001f600")
ord("ab")
ord("")
str(5)
str(-5)
str(True)
str(None)
str("a")
str(Fraction(3, 4))
str(Fraction(-3, 1))
str(Fraction({BIG}, 2))
f"x{{1 + 1}}y{{True}}z{{None}}{{Fraction(1, 2)}}"
f"{{'a'}}`${{1}}\\\\ \\n\\"'"
f"a{{{{b}}}}"
"tab\\t nul\\x00 quote\\" back\\\\ line\\u2028"
isinstance(True, int)
isinstance(1, bool)
isinstance(1, int)
isinstance({BIG}, int)
isinstance("a", str)
isinstance([], list)
isinstance((), list)
isinstance((), tuple)
isinstance([], (tuple, dict))
isinstance({{}}, dict)
isinstance(Fraction(1), Fraction)
isinstance(1, Fraction)
isinstance(Fraction(1), int)
isinstance(None, (int, str))
1 is None
None is None
[] is not None
(1 == 1) is True
", ".join(["a", "b"])
"".join([])
"-".join("abc")
"-".join(str(x) for x in range(3))
"-".join({{"a": 1, "b": 2}})
"-".join([1])
"a,b,,c".split(",")
"".split(",")
"abc".split("bc")
"abc".split("")
"aXbX".split("X")
"abc".startswith("ab")
"abc".startswith("")
"abc".startswith(("x", "a"))
"abc".endswith("bc")
"abc".endswith(("x", "y"))
"abc".startswith(1)
"aaa".replace("a", "b")
"a.b.c".replace(".", "$&")
"abc".replace("x", "y")
"aXbX".replace("X", "")
"abc".find("c")
"abc".find("x")
"a\\U0001f600b".find("b")
"a\\U0001f600b".find("\\U0001f600")
"abcabc".rfind("c")
"\\U0001f600abcabc".rfind("b")
"abc".rfind("x")
"abcabc".count("bc")
"aaaa".count("aa")
"abc".count("x")
"  a ".strip(" ")
"xyaxy".strip("xy")
"aaa".strip("a")
"  a ".lstrip(" ")
"  a ".rstrip(" ")
"\\u00a0a\\u2009".strip("\\u00a0\\u2009")
"]^-a-^]".strip("^-]")
[1, 2, 1].index(1)
[1, 2].index(3)
[1, True].index(True)
(1, 2).index(2)
[1, 2, 1].count(1)
(1, True, 1).count(1)
{{"a": 1}}.get("a")
{{"a": 1}}.get("b")
{{"a": 1}}.get("b", 5)
{{"a": None}}.get("a", 5)
{{"a": 0}}.get("a", 5)
{{1: "x"}}.get(True)
{{"a": 1}}.get([])
list({{"a": 1}}.keys())
list({{"a": 1}}.values())
(1).get("a")
"abc".get("a")
None.get("a")
list([1].items())
(1,).append(2)
[x for x in range(3)]
[x * y for x in [1, 2] for y in [3, 4] if x != y - 2]
[x for x in range(10) if x % 2 == 0 if x > 2]
[a + b for a, b in [(1, 2), [3, 4]]]
[a for a, b in [(1, 2, 3)]]
[a for a, b in ["xy", "zw"]]
[a + b + c for a, (b, c) in [(1, (2, 3))]]
[i + v for i, v in enumerate([5, 6])]
[k + v for k, v in {{"a": "b"}}.items()]
{{k: v for k, v in [("a", 1), ("b", 2), ("a", 3)]}}
{{x: x * x for x in range(3) if x}}
{{x % 2 == 0: x for x in range(3)}}
{{(x,): 1 for x in []}}
{{[]: 1 for x in [1]}}
[[y for y in range(x)] for x in range(3)]
[x for x in [[1, 2], [3]] for x in x]
[f(1) for f in [lambda x: x + 1, lambda x: x * 5]]
[f() for f in [lambda: i for i in range(3)]]
list(x + 1 for x in [1, 2])
sorted(-x for x in [1, 2])
(lambda x, y: x - y)(5, 3)
(lambda: 4)()
(lambda x: [x])(1) + [2]
[1, 2, 3][-1] if [] else [4][0]
[1 // 0 for x in []]
[1 // x for x in [1, 0]]
""".strip().splitlines()

# Whole functions: `case` is called; what is above it is the module's own.
PROGRAMS = {
    "swap": "def case():\n  a, b = 1, 2\n  a, b = b, a + b\n  return [a, b]",
    "euclid": "def case():\n  a, b = 1071, 462\n  while b:\n    a, b = b, a % b\n  return a",
    "unpack too many": "def case():\n  a, b = [1, 2, 3]\n  return a",
    "unpack too few": "def case():\n  a, b = [1]\n  return a",
    "unpack text": "def case():\n  a, b = 'xy'\n  return [b, a]",
    "unpack wide text": "def case():\n  a, b = '\\U0001f600y'\n  return [b, a]",
    "unpack dict": "def case():\n  a, b = {'x': 1, 'y': 2}\n  return [b, a]",
    "unpack nothing": "def case():\n  a, b = None\n  return a",
    "unpack nested": "def case():\n  a, (b, c) = 1, [2, 3]\n  return [a, b, c]",
    "unpack nested wrongly": "def case():\n  a, (b, c) = 1, [2]\n  return [a, b, c]",
    "list grows in place": "def case():\n  a = [1]\n  b = a\n  b += [2]\n  b += (3,)\n  b += 'x'\n  return [a, b]",
    "list plus is new": "def case():\n  a = [1]\n  b = a\n  b = b + [2]\n  return [a, b]",
    "tuple grows anew": "def case():\n  a = (1,)\n  b = a\n  b += (2,)\n  return [a, b]",
    "tuple plus list": "def case():\n  a = (1,)\n  a += [2]\n  return a",
    "list plus None": "def case():\n  a = [1]\n  a += None\n  return a",
    "list times": "def case():\n  a = [1]\n  a *= 2\n  return a",
    "text grows": "def case():\n  a = 'x'\n  a += 'y'\n  a *= 2\n  return a",
    "augmented": "def case():\n  a = 17\n  a -= 3\n  a *= 5\n  a //= 4\n  a %= 10\n  return a",
    "augmented item": "def case():\n  d = {'a': 1}\n  d['a'] += 5\n  x = [1, 2]\n  x[-1] *= 3\n  return [d, x]",
    "augmented item missing": "def case():\n  d = {}\n  d['a'] += 5\n  return d",
    "item set": "def case():\n  x = [1, 2, 3]\n  x[-1] = 9\n  d = {'b': 1}\n  d['a'] = 2\n  d['b'] = 3\n  return [x, d]",
    "item set beyond": "def case():\n  x = [1]\n  x[1] = 2\n  return x",
    "item set far before": "def case():\n  x = [1]\n  x[-2] = 2\n  return x",
    "item of tuple set": "def case():\n  x = (1,)\n  x[0] = 2\n  return x",
    "item of text set": "def case():\n  x = 'a'\n  x[0] = 'b'\n  return x",
    "value before place": "def case():\n  x = [1, 2, 3]\n  x[len(x) - 1] = x.pop()\n  return x",
    "dict order after pop": "def case():\n  d = {'a': 1, 'b': 2}\n  d.pop('a')\n  d['a'] = 3\n  return d",
    "dict pop missing": "def case():\n  return {}.pop('a')",
    "dict pop default": "def case():\n  return {}.pop('a', 5)",
    "dict setdefault": "def case():\n  d = {}\n  d.setdefault('a', []).append(1)\n  d.setdefault('a', []).append(2)\n  return d",
    "dict setdefault None": "def case():\n  d = {}\n  d.setdefault('a')\n  return d",
    "dict update": "def case():\n  d = {'a': 1}\n  d.update({'b': 2, 'a': 3})\n  d.update([('c', 4)])\n  return d",
    "dict of bool key": "def case():\n  d = {}\n  d[True] = 'a'\n  d[1] = 'b'\n  return d",
    "dict of list key": "def case():\n  d = {}\n  d[[]] = 1\n  return d",
    "list methods": "def case():\n  x = [1]\n  x.append(2)\n  x.extend((3, 4))\n  x.insert(0, 0)\n  x.insert(-1, 9)\n"
    "  x.insert(99, 7)\n  x.insert(-99, 6)\n  return [x, x.pop(), x.pop(0), x.pop(-2), x]",
    "list pops nothing": "def case():\n  return [].pop()",
    "list pops beyond": "def case():\n  return [1].pop(1)",
    "list extends itself": "def case():\n  x = [1, 2]\n  x.extend(x)\n  return x",
    "append gives None": "def case():\n  return [].append(1)",
    "aliasing": "def case():\n  x = [[]] * 2\n  x[0].append(1)\n  return x",
    "slice is a copy": "def case():\n  x = [1]\n  y = x[:]\n  y.append(2)\n  return x",
    "list() is a copy": "def case():\n  x = [1]\n  y = list(x)\n  y.append(2)\n  return x",
    "dict() is a copy": "def case():\n  x = {'a': 1}\n  y = dict(x)\n  y['b'] = 2\n  return x",
    "for over growing list": "def case():\n  x = [1, 2]\n  for i in x:\n    if i < 5 and len(x) < 6:\n      x.append(i + 1)\n  return x",
    "for variable stays": "def case():\n  i = 0\n  for i in range(3):\n    pass\n  return i",
    "for sets its variable": "def case():\n  out = []\n  for i in range(3):\n    out.append(i)\n    i = 99\n  return out",
    "for over dict": "def case():\n  return [k for k in {'b': 1, 'a': 2}]",
    "for over text": "def case():\n  out = []\n  for c in 'a\\U0001f600':\n    out.append(c)\n  return out",
    "for over nothing iterable": "def case():\n  for x in 5:\n    pass",
    "for unpacks": "def case():\n  out = []\n  for i, (a, b) in enumerate(zip('ab', [1, 2])):\n    out.append([i, a, b])\n  return out",
    "for unpacks wrongly": "def case():\n  for a, b in [[1, 2], [3]]:\n    pass",
    "break and continue": "def case():\n  out = []\n  for i in range(10):\n    if i == 2:\n      continue\n    if i == 5:\n"
    "      break\n    out.append(i)\n  return out",
    "while with break": "def case():\n  n = 0\n  while True:\n    n += 1\n    if n > 4:\n      break\n  return n",
    "elif": "def kind(n):\n  if n < 0:\n    return 'below'\n  elif n == 0:\n    return 'none'\n  elif n < 5:\n    return 'few'\n"
    "  else:\n    return 'many'\ndef case():\n  return [kind(n) for n in [-1, 0, 3, 9]]",
    "else if": "def kind(n):\n  if n < 0:\n    out = 'a'\n  else:\n    if n == 0:\n      out = 'b'\n    else:\n      out = 'c'\n"
    "  return out\ndef case():\n  return [kind(n) for n in [-1, 0, 3]]",
    "runs through": "def f(n):\n  if n:\n    return 1\ndef case():\n  return [f(0), f(1)]",
    "bare return": "def f(n):\n  if n:\n    return\n  return 1\ndef case():\n  return [f(0), f(1)]",
    "recursion": "def f(n):\n  return 1 if n < 2 else n * f(n - 1)\ndef case():\n  return f(30)",
    "closure is late": "def case():\n  out = []\n  for i in range(3):\n    out.append(lambda: i)\n  return [f() for f in out]",
    "closure in comprehension is late": "def case():\n  return [f() for f in [lambda: i * 2 for i in range(3)]]",
    "closure sees change": "def case():\n  n = 1\n  f = lambda: n\n  n = 2\n  return f()",
    "generator is lazy": "def case():\n  out = []\n  any(out.append(x) or x == 1 for x in range(5))\n  return out",
    "generator's source is eager": "def case():\n  return any(x for x in 5)",
    "generator binds late": "def case():\n  n = 1\n  g = (x * n for x in [1, 2])\n  n = 10\n  return list(g)",
    "generator runs once": "def case():\n  g = (x for x in [1, 2])\n  return [list(g), list(g)]",
    "generator to a function": "def f(rows):\n  return sum(rows)\ndef case():\n  return f(x * x for x in [1, 2, 3])",
    "comprehension hides": "def case():\n  x = 5\n  y = [x for x in range(3)]\n  return [x, y]",
    "comprehension of its own name": "def case():\n  x = [1, 2]\n  y = [x + 1 for x in x]\n  return [x, y]",
    "comprehension sees outside": "def case():\n  k = 3\n  return [x * k for x in range(3) if x != k - 2]",
    "lambda hides": "def case():\n  x = 1\n  f = lambda x: x + 1\n  return [x, f(5)]",
    "middle once": "def tell(x, seen):\n  seen.append(x)\n  return x\ndef case():\n  seen = []\n"
    "  a = tell(1, seen) < tell(2, seen) < tell(3, seen)\n  b = tell(1, seen) > tell(2, seen) > tell(3, seen)\n"
    "  return [a, b, seen]",
    "long chain": "def tell(x, seen):\n  seen.append(x)\n  return x\ndef case():\n  seen = []\n"
    "  a = tell(1, seen) < tell(2, seen) <= tell(2, seen) != tell(9, seen) > 3\n  return [a, seen]",
    "short circuit": "def tell(x, seen):\n  seen.append(x)\n  return x\ndef case():\n  seen = []\n"
    "  a = tell(0, seen) or tell([], seen) or tell('x', seen) or tell('y', seen)\n"
    "  b = tell(1, seen) and tell(0, seen) and tell(2, seen)\n  return [a, b, seen]",
    "order of arguments": "def tell(x, seen):\n  seen.append(x)\n  return x\ndef f(a, b=2, c=3):\n  return [a, b, c]\n"
    "def case():\n  seen = []\n  x = f(c=tell(1, seen), a=tell(2, seen))\n  return [x, seen]",
    "keywords": "def f(a, b=2, *, c=3, d):\n  return [a, b, c, d]\ndef case():\n"
    "  return [f(1, d=4), f(1, 5, d=6), f(d=1, a=2), f(1, c=9, d=8)]",
    "star call": "def f(a, b, c=3):\n  return [a, b, c]\ndef case():\n  x = [1, 2]\n  return [f(*x), f(*x, 4), f(0, *(5, 6))]",
    "default made once": "def make(n):\n  return Fraction(n, 3)\nONE = make(1)\ndef f(x=make(2), y=ONE, z=(1, 2), w=-1):\n"
    "  return [x, y, z, w]\ndef case():\n  return [f(), f(1), f(z=3)]",
    "constants": "A = 1\nB: int = A + 1\nC = [A, B]\nD = {'x': C, **{'y': B}}\ndef case():\n  return [A, B, C, D]",
    "constant of lambdas": "T = {'a': lambda x: x + 1}\ndef f(x):\n  return x * 2\nU = {'f': f}\ndef case():\n"
    "  return [T['a'](1), U['f'](4)]",
    "function as value": "def f(x):\n  return x * 2\ndef g(h, x):\n  return h(x)\ndef case():\n  return [g(f, 2), g(str, 3), g(len, 'ab'), g(lambda x: -x, 1)]",
    "function later in the module": "def case():\n  return later(2)\ndef later(x):\n  return x + 1",
    "names that JavaScript keeps": "def new(var, function=1):\n  let = var + function\n  this = [let for let in [let]]\n"
    "  return this\ndef delete(default):\n  return default\ndef case():\n  return [new(1), new(var=2, function=5), delete(default=3)]",
    "names that JavaScript has": "def case():\n  Map = {'a': 1}\n  Array = [Map]\n  Object = Array + [2]\n  undefined = None\n  return [Map, Array, Object, undefined, [Map for Map in [1]]]",
    "names that Python has": "def case():\n  list = [1]\n  str = 'a'\n  max = len(list)\n  return [list, str, max]",
    "dataclass": "@dataclass(frozen=True)\nclass P:\n  '''A point.'''\n  x: int\n  y: int = 2\n\n  @property\n  def total(self):\n"
    "    return self.x + self.y\n\n  def plus(self, n, twice=False):\n    return P(self.x + n * (2 if twice else 1), self.y)\n"
    "def case():\n  p = P(1)\n  return [p, p.x, p.total, p.plus(1), p.plus(n=1, twice=True), P(y=5, x=4), p == P(1, 2), p != P(2), p == 1, P(1) in [P(1)]]",
    "dataclasses differ by class": "@dataclass(frozen=True)\nclass P:\n  x: int\n@dataclass(frozen=True)\nclass Q:\n  x: int\ndef case():\n  return [P(1) == Q(1), P(1) == P(True), bool(P(0)), isinstance(P(1), P), isinstance(P(1), (Q, int))]",
    "dataclass of a function": "@dataclass(frozen=True)\nclass T:\n  work: object\n  name: str = 'x'\n  count: int = 3\ndef twice(a, b):\n  return [a, b] * 2\n"
    "def case():\n  t = T(twice)\n  return [t.work(1, 2), t.name, t.count, T(work=lambda a, b: a - b).work(5, 3)]",
    "dataclass field named as a method": "@dataclass(frozen=True)\nclass T:\n  get: object\n  index: int = 0\ndef case():\n  t = T(lambda k: k * 2)\n  return [t.get(4), t.index]",
    "dataclass without order": "@dataclass(frozen=True)\nclass P:\n  x: int\ndef case():\n  return P(1) < P(2)",
    "property that raises": "@dataclass(frozen=True)\nclass P:\n  x: int\n  @property\n  def part(self):\n    return 1 // self.x\ndef case():\n  return P(0).part",
    "self by another name": "@dataclass(frozen=True)\nclass P:\n  x: int\n  def f(this, y):\n    g = lambda z: this.x + z\n    return [g(y), [this.x for a in [1, 2]], list(this.x * b for b in [3])]\ndef case():\n  return P(1).f(2)",
    "error": "class E(ValueError):\n  '''Bad.'''\n\n  def __init__(self, text, at=0):\n    super().__init__(f'bad {text}')\n    self.text = text\n    self.at = at\n"
    "def case():\n  raise E('x', at=3)",
    "error caught": "class E(ValueError):\n  def __init__(self, text):\n    super().__init__(text)\n    self.text = text\n"
    "def case():\n  try:\n    raise E('x')\n  except ValueError as e:\n    return [str(e), f'{e}', isinstance(e, E), isinstance(e, ValueError), isinstance(e, KeyError)]",
    "error before its base": "class E(ValueError):\n  def __init__(self, a):\n    self.a = a\n    b = a * 2\n    super().__init__(b)\ndef case():\n  raise E('z')",
    "error with nothing": "class E(ValueError):\n  '''Bad.'''\nclass F(E):\n  pass\ndef case():\n  try:\n    raise F\n  except E as e:\n    return [str(e), e.args, isinstance(e, F)]",
    "error with two parts": "def case():\n  try:\n    raise ValueError('a', 1)\n  except ValueError as e:\n    return e.args",
    "error of an error's base": "class E(ValueError):\n  def __init__(self, n):\n    super().__init__('n')\n    self.n = n\nclass F(E):\n  '''More.'''\ndef case():\n  raise F(5)",
    "error sets args by itself": "class E(ValueError):\n  def __init__(self, a, b):\n    self.b = b\ndef case():\n  try:\n    raise E('x', 'y')\n  except E as e:\n    return [e.args, e.b]",
    "raise from": "class E(ValueError):\n  '''Bad.'''\ndef case():\n  try:\n    try:\n      return 1 // 0\n    except ZeroDivisionError as e:\n      raise E('x') from e\n  except E as f:\n    return str(f)",
    "raise from None": "class E(ValueError):\n  '''Bad.'''\ndef case():\n  try:\n    {}['a']\n  except KeyError:\n    raise E('x') from None",
    "raise again": "def case():\n  try:\n    return int('x')\n  except ValueError as e:\n    raise e",
    "except in turn": "def f(n):\n  try:\n    if n == 0:\n      return 1 // n\n    if n == 1:\n      return [][n]\n    if n == 2:\n      return {}[n]\n    if n == 3:\n      return int('x')\n    return n + 'x'\n"
    "  except (ZeroDivisionError, IndexError):\n    return 'zero or index'\n  except KeyError as e:\n    return e.args[0]\n  except ValueError:\n    return 'value'\n"
    "def case():\n  return [f(0), f(1), f(2), f(3)]",
    "except passes on": "def case():\n  try:\n    return 1 + 'x'\n  except ValueError:\n    return 'value'",
    "except Exception": "def case():\n  try:\n    return 1 + 'x'\n  except Exception as e:\n    return isinstance(e, TypeError)",
    "except by base": "def case():\n  out = []\n  for x in [0, 1]:\n    try:\n      out.append(1 // x)\n      out.append([][x])\n    except ArithmeticError:\n      out.append('a')\n    except LookupError:\n      out.append('l')\n  return out",
    "except goes on": "def case():\n  out = []\n  for x in [1, 0, 2]:\n    try:\n      out.append(6 // x)\n    except ZeroDivisionError:\n      continue\n  return out",
    "except in except": "def case():\n  try:\n    return int('a')\n  except ValueError:\n    try:\n      return 1 // 0\n    except ZeroDivisionError:\n      return 'both'",
    "error text of numbers": "def case():\n  try:\n    raise ValueError(5)\n  except ValueError as e:\n    return str(e)",
    "truth of conditions": "def case():\n  out = []\n  for x in [0, 1, '', 'a', [], [0], (), {}, {'a': 0}, None, Fraction(0), Fraction(1)]:\n    if x:\n      out.append(1)\n    elif not x:\n      out.append(0)\n  return out",
    "conditions mixed": "def case():\n  out = []\n  for a in [[], [1]]:\n    for b in ['', 'x']:\n      if a and not b or b and not a:\n        out.append([a, b])\n      if not (a or b) and a is not None:\n        out.append('none')\n  return out",
    "while on a list": "def case():\n  x = [1, 2, 3]\n  out = []\n  while x and len(out) < 2:\n    out.append(x.pop())\n  return out",
    "key of a sort": "def case():\n  rows = [{'n': 2, 't': 'a'}, {'n': 1, 't': 'b'}, {'n': 2, 't': 'c'}]\n  return [r['t'] for r in sorted(rows, key=lambda r: (-r['n'], r['t']))]",
    "sort is stable": "def case():\n  rows = [[i % 3, i] for i in range(30)]\n  return [sorted(rows, key=lambda r: r[0]), sorted(rows, key=lambda r: r[0], reverse=True)]",
    "sort key raises": "def case():\n  return sorted([1, 0], key=lambda x: 1 // x)",
    "factorials": "def case():\n  out = []\n  n = 1\n  for i in range(1, 26):\n    n *= i\n    out.append(n)\n  return [out, [x // 7 for x in out], [x % 1000007 for x in out], [Fraction(x, out[5]) for x in out]]",
    "harmonic": "def case():\n  total = Fraction(0)\n  for i in range(1, 60):\n    total += Fraction(1, i)\n  return [total, total // 1, total % 1, -total // 1, int(-total)]",
    "alternating": "def case():\n  return sum(Fraction((-1 if i % 2 else 1) * i, 2 * i + 1) for i in range(40))",
    "digits by text": "def case():\n  out = ''\n  for c in 'a1b22':\n    if c in '0123456789':\n      out = out + c\n  return [int(out), out]",
    "text scanned": "def case():\n  s = 'x\\U0001f600,y'\n  out = []\n  i = 0\n  while i < len(s):\n    out.append(s[i])\n    i += 1\n  return [out, s.find(','), s[s.find(',') + 1:]]",
    "cast": "from typing import cast\ndef case():\n  return cast(int, '5') + 'x'",
    "types only": "from collections.abc import Callable\nfrom typing import Any, TypeAlias, TypedDict\nRow: TypeAlias = dict[str, Any]\nclass Shape(TypedDict):\n  a: int\ndef f(x: Row, g: 'Callable[[int], int] | None' = None) -> Row:\n  y: Row = x\n  z: int\n  return y\ndef case():\n  return f({'a': 1})",
    "docstrings": "def f():\n  '''Only said.\n\n  More.\n  '''\ndef case():\n  '''One. */ two'''\n  return f()",
    "positional only": "def f(a, /, b):\n  return [a, b]\ndef case():\n  return f(1, b=2)",
    "deep": "def case():\n  x = []\n  for i in range(50):\n    x = [x]\n  y = []\n  for i in range(50):\n    y = [y]\n  return x == y",
}  # fmt: skip
