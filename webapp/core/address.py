"""Addresses that the program itself makes: the same text on the server and on the phone."""

_PLAIN = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_.~"
_HEX = "0123456789ABCDEF"


def work_address(tool: str, typed: dict[str, str]) -> str:
    """Give the address of a tool's page with what was typed, leans written as words."""
    return _asked(f"/work/{tool}", typed)


def source_address(tool: str, typed: dict[str, str]) -> str:
    """Give the address at which a number is picked for a tool's field, with what was typed."""
    return _asked(f"/from/{tool}", typed)


def _asked(page: str, typed: dict[str, str]) -> str:
    query = "&".join([f"{quoted(name)}={quoted(worded(text))}" for name, text in typed.items() if text != ""])
    return f"{page}?{query}" if query else page


def project_address(project: str) -> str:
    """Give the address of a project's page."""
    return f"/projects/{quoted(project)}"


def part_address(project: str, entry: str) -> str:
    """Give the address of one part's page."""
    return f"/projects/{quoted(project)}/parts/{quoted(entry)}"


def glue_address(project: str) -> str:
    """Give the address of the list of what cannot be done after the glue-up."""
    return f"/projects/{quoted(project)}/glue"


def measure_address(project: str, place: str) -> str:
    """Give the address of a project's page with a place in its form for a reading."""
    return f"/projects/{quoted(project)}?place={quoted(place)}#reading"


def help_address(tool: str, project: str) -> str:
    """Give the address of a tool's help; it leads back into the project that it was asked from."""
    return f"/help/{tool}?project={quoted(project)}" if project else f"/help/{tool}"


def form_address(project: str, form: str) -> str:
    """Give the address of one of the forms, or of a stage, of a project's page."""
    return f"{project_address(project)}#{form}"


def reading_address(project: str, entry: str) -> str:
    """Give the address of one reading's page."""
    return f"/projects/{quoted(project)}/readings/{quoted(entry)}"


def sheet_address(project: str, entry: str) -> str:
    """Give the address of a kept sheet's page."""
    return f"/projects/{quoted(project)}/sheets/{quoted(entry)}"


def origin_address(project: str, entry: str, key: str) -> str:
    """Give the address that says how a number of an entry came about."""
    return f"/projects/{quoted(project)}/origin/{quoted(entry)}/{quoted(key)}"


def round_address(project: str, entry: str) -> str:
    """Give the address of a round of dry fit."""
    return f"/projects/{quoted(project)}/rounds/{quoted(entry)}"


def worded(text: str) -> str:
    """Write leans that were typed as touching signs as their words: a bare `+` in an address is a space."""
    return "\n".join([_worded_line(line) for line in text.split("\n")])


def _worded_line(text: str) -> str:
    for sign, word in [("+", " strong"), ("-", " scant")]:
        if text.endswith(sign) and len(text) > 1 and text[-2] not in " \t":
            return text[:-1] + word
    return text


def quoted(text: str) -> str:
    """Percent-encode all but the unreserved characters of RFC 3986, as UTF-8; a space too."""
    if text.strip(_PLAIN) == "":
        return text
    return "".join([c if c in _PLAIN else _escaped(ord(c)) for c in text])


def _escaped(code: int) -> str:
    return "".join([f"%{_HEX[byte // 16]}{_HEX[byte % 16]}" for byte in _utf8(code)])


def _utf8(code: int) -> list[int]:
    """Give the UTF-8 bytes of a code point, by RFC 3629."""
    if code < 0x80:
        return [code]
    if code < 0x800:
        return [0xC0 + code // 64, 0x80 + code % 64]
    if code < 0x10000:
        return [0xE0 + code // 4096, 0x80 + code // 64 % 64, 0x80 + code % 64]
    return [0xF0 + code // 262144, 0x80 + code // 4096 % 64, 0x80 + code // 64 % 64, 0x80 + code % 64]
