"""`python -m tests`: install what the tests need beside Python's packages, then check and test everything.

Words after it go to pytest: `python -m tests tests/core -k spacing` runs the checks and those tests.
"""

import subprocess
import sys
from pathlib import Path

from tests.browser import install

TOP = Path(__file__).resolve().parent.parent

CHECKS = (
    ("ruff", "check", "."),
    ("ruff", "format", "--check", "."),
    ("mypy",),
    ("lint-imports",),
    (sys.executable, "-m", "tests.check_scripts"),
)


PARALLEL = ("-n", "auto", "--dist", "loadfile")  # a file's tests share its server and its browser


def main(words: list[str]) -> int:
    """Run everything, the quick checks first; return the first exit status that is not 0."""
    install()
    scripts = Path(sys.executable).parent
    for name, *rest in CHECKS:
        command = [name if Path(name).is_absolute() else str(scripts / name), *rest]
        print("$", Path(name).name, *rest, flush=True)
        status = subprocess.run(command, cwd=TOP).returncode
        if status:
            return status
    return subprocess.run([sys.executable, "-m", "pytest", *PARALLEL, *words], cwd=TOP).returncode


sys.exit(main(sys.argv[1:]))
