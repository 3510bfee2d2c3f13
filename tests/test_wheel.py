"""What is installed is what stands here: the wheel holds every template and static file, and nothing else."""

import subprocess
import sys
import zipfile
from pathlib import Path

TOP = Path(__file__).parent.parent


def files(folder: str) -> set[str]:
    return {path.relative_to(TOP).as_posix() for path in (TOP / folder).rglob("*") if path.is_file()}


def test_the_wheel_holds_every_template_and_static_file_and_nothing_else(tmp_path: Path) -> None:
    command = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(tmp_path), str(TOP)]
    built = subprocess.run(command, capture_output=True, text=True)
    assert built.returncode == 0, built.stderr
    (wheel,) = tmp_path.glob("*.whl")
    names = {name for name in zipfile.ZipFile(wheel).namelist() if ".dist-info/" not in name}
    code = {name for name in files("webapp") if "__pycache__" not in name}
    assert names == code | {f"webapp/{name}" for name in files("templates") | files("static")}


def test_no_python_lies_among_templates_or_static_files() -> None:
    assert [name for name in files("templates") | files("static") if name.endswith(".py")] == []
