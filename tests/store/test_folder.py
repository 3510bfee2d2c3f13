import os
import subprocess
import sys
from pathlib import Path

import pytest
from platformdirs import user_data_path

from webapp.store import FolderHeldError, StoreError
from webapp.store.folder import data_folder, held, made


def test_the_flag_comes_before_the_environment_before_the_platforms_folder(monkeypatch, tmp_path):
    monkeypatch.setenv("SHOULDERLINE_DATA", str(tmp_path / "named"))
    assert data_folder(tmp_path / "flag") == tmp_path / "flag"
    assert data_folder() == tmp_path / "named"
    monkeypatch.setenv("SHOULDERLINE_DATA", "")
    assert data_folder() == user_data_path("shoulderline", appauthor=False)
    monkeypatch.delenv("SHOULDERLINE_DATA")
    assert data_folder() == user_data_path("shoulderline", appauthor=False)


@pytest.mark.skipif(os.name == "nt", reason="modes are POSIX")
def test_a_new_folder_is_its_owners_alone(tmp_path):
    assert made(tmp_path / "new").stat().st_mode & 0o077 == 0


def test_a_held_folder_is_held_against_others_until_it_is_let_go(tmp_path):
    with held(tmp_path), pytest.raises(FolderHeldError, match="stop it first"), held(tmp_path):
        pass
    with held(tmp_path):
        assert (tmp_path / "serving.lock").exists()


def test_the_lock_goes_with_the_process_that_held_it(tmp_path):
    script = (
        "import sys, time; from pathlib import Path; from webapp.store.folder import held\n"
        "with held(Path(sys.argv[1])):\n    print('held', flush=True); time.sleep(60)"
    )
    other = subprocess.Popen([sys.executable, "-c", script, str(tmp_path)], stdout=subprocess.PIPE, text=True)
    with other:
        assert other.stdout
        assert other.stdout.readline() == "held\n"
        with pytest.raises(FolderHeldError), held(tmp_path):
            pass
        other.kill()
    with held(tmp_path):
        assert other.returncode != 0


def test_a_folder_that_cannot_be_made_is_a_plain_error(tmp_path):
    (tmp_path / "file").write_text("x", encoding="utf-8")
    with pytest.raises(StoreError, match="cannot be used"), held(Path(tmp_path / "file" / "in")):
        pass
