"""A piece as its screens look at it: what stands of its parts, joints, sheets and readings, each found once."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_cut import done_steps
from webapp.core.follow import Follow, follow
from webapp.core.setting import Setting, setting
from webapp.core.tool import Tool

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
Worked: TypeAlias = dict[str, Any]
Factors: TypeAlias = dict[str, Fraction]


@dataclass(frozen=True)
class Piece:
    """A project's summary with what stands of it; `worked` holds the sheets that stand, by entry."""

    summary: Summary
    worked: Worked
    how: Setting
    followed: Follow
    parts: list[Item]
    joints: list[Item]
    sheets: list[Item]
    rounds: list[Item]
    cuts: list[Item]
    done: dict[str, str]  # the steps that are done, each with the entry that says so
    tools: dict[str, Tool]

    def of_stage(self, key: str) -> list[Item]:
        """Return the sheets that stand and belong to a stage."""
        return [
            sheet for sheet in self.sheets if sheet["tool"] in self.tools and self.tools[sheet["tool"]].stage == key
        ]


def piece(summary: Summary, worked: Worked, factors: Factors, tools: list[Tool]) -> Piece:
    """Look at a project as a piece."""
    return Piece(
        summary,
        worked,
        setting(summary["unit"], summary["graduation"], factors),
        follow(summary, worked, factors),
        standing(summary, "parts"),
        standing(summary, "joints"),
        standing(summary, "sheets"),
        standing(summary, "rounds"),
        standing(summary, "cuts"),
        done_steps(summary),
        {tool.name: tool for tool in tools},
    )


def standing(summary: Summary, name: str) -> list[Item]:
    """Return what stands in one of a summary's lists."""
    return [head for thing in summary[name] for head in thing["heads"]]
