"""The wheel carries migrations, sample and fonts: what is installed from it works without the checkout."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

HERE = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the wheel's content and nothing of the checkout."""
    folder = tmp_path_factory.mktemp("wheel")
    build = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(folder / "dist"), str(HERE)]
    subprocess.run(build, check=True, capture_output=True, text=True)
    (wheel,) = (folder / "dist").glob("*.whl")
    target = folder / "site"
    pip = [sys.executable, "-m", "pip", "install", "--no-deps", "--no-index", "--target", str(target), str(wheel)]
    subprocess.run(pip, check=True, capture_output=True, text=True)
    return target


def run(installed: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """A command of the installed program, started in a folder of its own."""
    environment = {**os.environ, "PYTHONPATH": str(installed), "PYTHONWARNINGS": "error", "COLUMNS": "100"}
    environment.pop("DISPLAY", None)
    environment.pop("QT_QPA_PLATFORM", None)
    command = [sys.executable, "-m", "inspector", *words]
    return subprocess.run(command, cwd=installed.parent, env=environment, capture_output=True, text=True, check=False)


def test_the_wheel_holds_migrations_sample_and_fonts(installed: Path) -> None:
    package = installed / "inspector"
    wanted = ["_migrations/env.py", "_migrations/versions/0001_first_book.py", "_sample_register/gear.csv"]
    wanted += ["paper/fonts/DejaVuSansCondensed.ttf", "paper/fonts/LICENSE.txt", "rulebook/checks.toml"]
    wanted += ["paper/fonts/DroidSansFallback.ttf", "paper/fonts/LICENSE-DroidSansFallback.txt"]
    assert [name for name in wanted if not (package / name).is_file()] == []


def test_the_installed_program_spends_the_evening(installed: Path, tmp_path: Path) -> None:
    where = subprocess.run(
        [sys.executable, "-c", "import inspector; print(inspector.__file__)"],
        cwd=installed.parent,
        env={**os.environ, "PYTHONPATH": str(installed)},
        capture_output=True,
        text=True,
        check=True,
    )
    assert where.stdout.strip().startswith(str(installed))
    told = run(installed, "demo", "--to", str(tmp_path / "evening"))
    assert told.returncode == 0, told.stderr
    assert "no screen here" in told.stdout
    assert len(list((tmp_path / "evening" / "documents").glob("*.pdf"))) == 3
    verified = run(installed, "--register", str(tmp_path / "evening"), "verify")
    assert verified.returncode == 0 and "Nothing was changed." in verified.stdout
