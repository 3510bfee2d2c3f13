"""Inputs for a tool, drawn from its declaration and its vectors: texts in all forms, good and bad, from a seed."""

from collections.abc import Iterator
from fractions import Fraction
from random import Random

from tests.spellings import spell
from tests.vectors import cases
from webapp.core.reading import ReadingError, read, read_list
from webapp.core.reading_pairs import read_pair
from webapp.core.setting import GRADUATIONS, UNITS, Setting, SettingError, setting
from webapp.core.tool import Field, Tool
from webapp.units import FACTORS

Typed = dict[str, str]
READS = ("length", "widths", "count", "pair")  # kinds that are read as the readings' vectors name them
COUNTS = ["1", "2", "3", " 5 ", "seven", "9", "twelve", "20", "40"]
JUNK = [*"0123456789 +-x*/()'\".,;:½aGm\t\u00a0\u2009éλ\U0001d7d8\x00\n\\{}", " in", " mm", "strong", "0" * 90]
OWN = ["unit", "graduation"]
NAMES = ["back rail, left", "back rail, right", "end rail, front", "end rail, back", "wing, 1", "wing, 2", "post", ""]
NUDGES = [Fraction(n, 128) for n in (0, 0, 0, 1, -1, 2, -2, 4, -4, 7, 9, -9, 16, 48)]
LISTS = ["a:\nb: 2 in", "a: 1 in\nA : 2 in", "\n".join(f"{i}: {i + 1} in" for i in range(201)), "a: " + "1" * 40000]


def bad_texts(kind: str) -> list[str]:
    """Return the texts that the readings' vectors refuse for a kind of field, and some that no choice is."""
    if kind == "choice":
        return ["Gap", "none of them", "{x}", "slat;"]
    if kind == "lines":
        return LISTS + [f"back rail, left: {text}" for text in bad_texts("length") if "\n" not in text]
    longest = ["1 + " * 40 + "1", "2; " * 400 + "2"]
    return longest + [
        case["text"]
        for case in cases("readings")
        if "at" in case and case.get("read", "length") == kind and kind in READS and case["text"].strip()
    ]


class Drawer:
    """Draws what is typed into one tool."""

    def __init__(self, tool: Tool, seed: int) -> None:
        self.tool = tool
        self.draw = Random(seed)
        self.bases = [dict(case["typed"]) for case in cases(tool.name)] + [dict(tool.example)]
        self.grounds = self.bases + [dict(case["typed"]) for case in cases(tool.name) if "sheet" in case] * 2

    def swept(self) -> Iterator[Typed]:
        """Give every vector, every choice on the ground of some, and every bad text at every field."""
        yield from [dict(base) for base in self.bases]
        yield {}
        for field in self.tool.fields:
            for value, _ in field.choices:
                yield from [{**base, field.name: value} for base in self.bases[::5]]
            for text in bad_texts(field.kind):
                yield {**dict(self.tool.example), field.name: text}
        yield from self.swept_settings()

    def swept_settings(self) -> Iterator[Typed]:
        """Give every unit with every graduation, and some that there are none of."""
        every = sorted({graduation for names in GRADUATIONS.values() for graduation in names})
        for unit in [*UNITS, "", "cm", "inch"]:
            for graduation in [*every, "", " ", "1/10"]:
                yield {**dict(self.tool.example), "unit": unit, "graduation": graduation}
        for case in cases("readings"):
            if "at" in case and case.get("unit") == "mm":
                yield from [{"unit": "mm", f.name: case["text"]} for f in self.tool.fields if f.kind == "length"]

    def drawn(self) -> Typed:
        """Draw one input: a vector's ground, often said in another unit, with up to three changes."""
        typed = dict(self.draw.choice(self.grounds))
        if self.draw.random() < 0.6:
            self.respell(typed)
        for _ in range(self.draw.choice([0, 0, 1, 1, 1, 2, 3])):
            self.change(typed)
        return typed

    def respell(self, typed: Typed) -> None:
        """Say the same lengths in another unit and in other words."""
        before = self.setting_of(typed)
        typed["unit"] = self.draw.choice(UNITS)
        typed["graduation"] = self.draw.choice([*GRADUATIONS[typed["unit"]], ""])
        for field in self.tool.fields:
            values = self.values(field, typed.get(field.name, ""), before)
            if field.kind == "lines" and field.name in typed:
                typed[field.name] = self.lines_said(typed[field.name], before, typed, [Fraction(0)])
            elif values:
                typed[field.name] = self.said(field, values, typed)

    def setting_of(self, typed: Typed) -> Setting:
        try:
            return setting(typed.get("unit", ""), typed.get("graduation", ""), FACTORS)
        except SettingError:
            return setting("", "", FACTORS)

    def values(self, field: Field, text: str, how: Setting) -> list[Fraction]:
        """Read a field's lengths, where it holds some that read and are more than 0."""
        if field.kind not in ("length", "widths", "pair"):
            return []
        try:
            found = {"length": lambda *said: [read(*said)], "widths": read_list, "pair": read_pair}[field.kind](
                text, how
            )
        except ReadingError:
            return []
        return found if min(found) > 0 else []

    def said(self, field: Field, values: list[Fraction], typed: Typed) -> str:
        """Write lengths for a field."""
        between = " x " if field.kind == "pair" else self.draw.choice(["; ", ";", ", "])
        return between.join(self.spelt(value, typed) for value in values)

    def spelt(self, value: Fraction, typed: Typed) -> str:
        unit = typed.get("unit", "")
        return spell(value, unit if unit in UNITS else "in", self.draw)

    def lines_said(self, text: str, before: Setting, typed: Typed, nudges: list[Fraction]) -> str:
        """Write a list again, each length moved by one of the nudges; names and words before a length stay."""
        return "\n".join(self.line_said(line, before, typed, nudges) for line in text.split("\n"))

    def line_said(self, line: str, before: Setting, typed: Typed, nudges: list[Fraction]) -> str:
        name, colon, said = line.rpartition(":")
        words = said.split(" ")
        for i in range(len(words)):
            try:
                value = read(" ".join(words[i:]), before) + self.draw.choice(nudges)
            except ReadingError:
                continue
            return f"{name}{colon}{' '.join(words[:i])} {self.spelt(value, typed)}" if value > 0 else line
        return line

    def lines_drawn(self, field: Field, typed: Typed) -> str:
        """Draw a list: lengths about one length, or what is said in the field's words."""
        about = Fraction(self.draw.randint(8, 400), 8)
        names = self.draw.sample(NAMES, self.draw.randint(1, len(NAMES)))
        worded = list(field.choices) if self.draw.random() < 0.3 else []
        return "\n".join(f"{name}: {self.item(about, worded, typed)}" for name in names)

    def item(self, about: Fraction, worded: list[tuple[str, str]], typed: Typed) -> str:
        if not worded or self.draw.random() < 0.3:
            return self.spelt(about + self.draw.choice(NUDGES), typed)
        word = self.draw.choice(worded)[0]
        return word + self.spelt(abs(self.draw.choice(NUDGES)) + Fraction(1, 128), typed) if word[-1] == " " else word

    def change(self, typed: Typed) -> None:
        """Change one field: left out, said otherwise, made longer or shorter, drawn anew, or spoilt."""
        name = self.draw.choice([field.name for field in self.tool.fields] + OWN)
        kinds = [field for field in self.tool.fields if field.name == name]
        how = self.draw.choices(["blank", "scaled", "fresh", "bad"], [2, 5, 3, 2])[0]
        if how == "blank":
            typed.pop(name, None)
        elif not kinds:
            self.change_setting(typed, name)
        elif how == "bad":
            typed[name] = self.spoilt(kinds[0], typed.get(name, ""))
        else:
            typed[name] = self.fresh(kinds[0], typed, scaled=how == "scaled")

    def change_setting(self, typed: Typed, name: str) -> None:
        known = [*GRADUATIONS[self.setting_of(typed).unit], "1/8"] if name == "graduation" else UNITS
        typed[name] = self.draw.choice(known)

    def fresh(self, field: Field, typed: Typed, scaled: bool) -> str:
        """Draw what a field may hold: `scaled` from what stands there already."""
        if field.kind == "lines":
            before = self.setting_of(typed)
            text = typed.get(field.name, "") if scaled else ""
            return self.lines_said(text, before, typed, NUDGES) if text else self.lines_drawn(field, typed)
        if field.kind == "choice" or (field.choices and self.draw.random() < 0.4):
            return self.draw.choice(field.choices)[0]
        if field.kind == "count":
            return self.draw.choice(COUNTS)
        values = self.values(field, typed.get(field.name, ""), self.setting_of(typed)) if scaled else []
        if values:
            share = Fraction(self.draw.randint(16, 96), 48)
            values = [value * share for value in values]
        else:
            several = {"widths": self.draw.randint(1, 4), "pair": 2}.get(field.kind, 1)
            values = [Fraction(self.draw.randint(1, 400), self.draw.choice([8, 16, 30, 64])) for _ in range(several)]
        return self.said(field, values, typed)

    def spoilt(self, field: Field, text: str) -> str:
        """Take a text that is refused, or spoil what stands there by up to three edits."""
        if self.draw.random() < 0.5 or not text:
            return self.draw.choice(bad_texts(field.kind))
        for _ in range(self.draw.randint(1, 3)):
            place = self.draw.randint(0, len(text))
            text = text[:place] + self.draw.choice([*JUNK, ""]) + text[place + self.draw.randint(0, 1) :]
        return text
