from webapp.core.text import fold_name, indent, lines, small, trim


def test_only_the_named_white_space_is_trimmed():
    assert trim(" \t\u00a0\u2009\u202f17 3/8\u202f \t") == "17 3/8"
    assert trim("\n17\r") == "\n17\r"
    assert trim("\u200317") == "\u200317"


def test_the_white_space_before_is_counted():
    assert [indent(text) for text in ("5", " \u00a05 ", "", "  ", "\n 5")] == [0, 2, 0, 0, 0]


def test_small_letters_are_ascii_alone():
    assert small("MM Ärger İ ſ K") == "mm Ärger İ ſ k"


def test_names_compare_with_case_and_spaces_folded():
    assert fold_name("  Upper\u00a0 Rail,\tleft ") == "upper rail, left"
    assert fold_name("upper rail, left") == fold_name("UPPER  RAIL, LEFT")
    assert fold_name("upperrail, left") != fold_name("upper rail, left")


def test_lines_end_at_cr_lf_and_at_lf():
    assert lines("a\r\nb\nc\rd") == ["a", "b", "c\rd"]
    assert lines("") == [""]
