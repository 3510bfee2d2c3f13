"""`python -m tests`: install what the tests need beside Python's packages, then check and test everything.

Words after it go to pytest: `python -m tests tests/core -k spacing` runs the checks and those tests.
"""

import os
import subprocess
import sys
from pathlib import Path

from tests import check_scripts
from tests.browser import install

TOP = Path(__file__).resolve().parent.parent

QUICK = (
    ("ruff", "check", "."),
    ("ruff", "format", "--check", "."),
    ("lint-imports",),
)
BESIDE = (  # these take seconds, and run while the tests do
    ("mypy",),
    (sys.executable, "-m", "tests.check_scripts"),
)

# A third of the tests' time is waiting, so there is one worker more than there are cores. A file's tests share its
# server; the files come in the order that tests/conftest.py gives them.
WORKERS = str((os.cpu_count() or 1) + 1)
PARALLEL = ("-n", WORKERS, "--dist", "loadfile", "--no-loadscope-reorder")


def command(check: tuple[str, ...]) -> list[str]:
    """Return the command of a check: its program stands beside this Python."""
    name, *rest = check
    return [name if Path(name).is_absolute() else str(Path(sys.executable).parent / name), *rest]


def title(check: tuple[str, ...]) -> str:
    return f"$ {Path(check[0]).name} {' '.join(check[1:])}"


def begun(check: tuple[str, ...]) -> subprocess.Popen[str]:
    """Start a check whose words are heard when the tests have ended."""
    return subprocess.Popen(command(check), cwd=TOP, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)


def main(words: list[str]) -> int:
    """Run everything, the quick checks first and the others beside the tests; return the first status that is not 0."""
    install()
    for check in QUICK:
        print(title(check), flush=True)
        status = subprocess.run(command(check), cwd=TOP).returncode
        if status:
            return status
    try:  # what both the check and the tests want is there before they begin
        check_scripts.install(check_scripts.node_folder())
    except check_scripts.MissingError as error:
        sys.exit(str(error))
    beside = [(check, begun(check)) for check in BESIDE]
    statuses = [subprocess.run([sys.executable, "-m", "pytest", *PARALLEL, *words], cwd=TOP).returncode]
    for check, running in beside:
        said, _ = running.communicate()
        print(f"{title(check)}\n{said}", flush=True)
        statuses.append(running.returncode)
    return next((status for status in statuses if status), 0)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
