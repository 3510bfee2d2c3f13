"""A browser that trusts a shop's authority, as a phone does that was set up: by its own store of certificates."""

import os
import subprocess
from pathlib import Path

from cryptography.hazmat.primitives.serialization import Encoding
from playwright.sync_api import Browser, BrowserContext

from tests.browser import executable, flags
from webapp.access.authority import Authority

SIZE = {"width": 360, "height": 740}


def trust(home: Path, root: Authority) -> None:
    """Put a root into the certificate store of a home folder."""
    store = home / ".pki" / "nssdb"
    store.mkdir(parents=True)
    file = home / "root.pem"
    file.write_bytes(root.certificate.public_bytes(Encoding.PEM))
    database = f"sql:{store}"
    subprocess.run(["certutil", "-N", "-d", database, "--empty-password"], check=True)
    subprocess.run(["certutil", "-A", "-d", database, "-t", "C,,", "-n", "shop", "-i", str(file)], check=True)


def phone_at(browser: Browser, home: Path, *rules: str) -> BrowserContext:
    """Start a browser with a home and a profile of its own; `rules` say where names are, as the network would."""
    home.mkdir(parents=True, exist_ok=True)
    said = ", ".join(rules)
    return browser.browser_type.launch_persistent_context(
        home / "profile",
        args=[*flags(), *([f"--host-resolver-rules={said}"] if said else [])],
        executable_path=executable(browser.browser_type),
        env={**os.environ, "HOME": str(home)},
        viewport=SIZE,  # type: ignore[arg-type]
    )
