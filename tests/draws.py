"""Inputs for a tool, drawn from its declaration and its vectors: texts in all forms, good and bad, from a seed."""

from collections.abc import Iterator
from fractions import Fraction
from random import Random

from tests.spellings import spell
from tests.vectors import cases
from webapp.core.reading import ReadingError, read, read_list
from webapp.core.setting import GRADUATIONS, UNITS, Setting, SettingError, setting
from webapp.core.tool import Field, Tool
from webapp.units import FACTORS

Typed = dict[str, str]
READS = {"length": "length", "widths": "widths", "count": "count"}  # a field's kind, as the readings' vectors name it
COUNTS = ["1", "2", "3", " 5 ", "seven", "9", "twelve", "20", "40"]
JUNK = [*"0123456789 +-x*/()'\".,;:½aGm\t\u00a0\u2009éλ\U0001d7d8\x00\n\\{}", " in", " mm", "strong", "0" * 90]
OWN = ["unit", "graduation"]


def bad_texts(kind: str) -> list[str]:
    """Return the texts that the readings' vectors refuse for a kind of field, and some that no choice is."""
    if kind == "choice":
        return ["Gap", "none of them", "{x}", "slat;"]
    longest = ["1 + " * 40 + "1", "2; " * 400 + "2"]
    return longest + [
        case["text"]
        for case in cases("readings")
        if "at" in case and case.get("read", "length") == READS[kind] and case["text"].strip()
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
            if values:
                typed[field.name] = self.said(field, values, typed)

    def setting_of(self, typed: Typed) -> Setting:
        try:
            return setting(typed.get("unit", ""), typed.get("graduation", ""), FACTORS)
        except SettingError:
            return setting("", "", FACTORS)

    def values(self, field: Field, text: str, how: Setting) -> list[Fraction]:
        """Read a field's lengths, where it holds some that read and are more than 0."""
        if field.kind not in ("length", "widths"):
            return []
        try:
            found = [read(text, how)] if field.kind == "length" else read_list(text, how)
        except ReadingError:
            return []
        return found if min(found) > 0 else []

    def said(self, field: Field, values: list[Fraction], typed: Typed) -> str:
        """Write lengths for a field."""
        unit = typed.get("unit", "") if typed.get("unit", "") in UNITS else "in"
        between = self.draw.choice(["; ", ";", ", "])
        return between.join(spell(value, unit, self.draw) for value in values)

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
        if field.kind == "choice":
            return self.draw.choice(field.choices)[0]
        if field.kind == "count":
            return self.draw.choice(COUNTS)
        values = self.values(field, typed.get(field.name, ""), self.setting_of(typed)) if scaled else []
        if values:
            share = Fraction(self.draw.randint(16, 96), 48)
            values = [value * share for value in values]
        else:
            several = self.draw.randint(1, 4) if field.kind == "widths" else 1
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
