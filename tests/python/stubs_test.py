"""The stubs say what the module has, and a type checker finds them where they are installed: BUILD STUB."""
import os
import pathlib
import re
import shutil
import site
import subprocess
import sys
import unittest

import mypy

BUILD, STUB = map(pathlib.Path, (sys.argv.pop(1), sys.argv.pop(1)))
# Classes that only describe a dict do not exist when a program runs. The others cannot be made by hand, which pybind11
# says by a constructor that always refuses, and have a metaclass of its own.
LEFT_OUT = [f"bide\\.{name}" for name in re.findall(r"^class (\w+)\(TypedDict\)", STUB.read_text(), re.MULTILINE)]
LEFT_OUT += [f"bide\\.{name}(\\.__init__)?" for name in re.findall(r"^class (\w+):", STUB.read_text(), re.MULTILINE)]


def said(*command, **environment):
    run = subprocess.run(
        [sys.executable, "-m", *map(str, command)],
        env=os.environ | environment,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    return run.returncode, run.stdout


def compared(folder):
    """What stubtest says of the stub in a folder, and the module."""
    pathlib.Path("left_out").write_text("\n".join(LEFT_OUT))
    return said("mypy.stubtest", "bide", "--concise", "--allowlist", "left_out", "--mypy-config-file", "mypy.ini",
                MYPYPATH=str(folder))


class Stubs(unittest.TestCase):
    def setUp(self):
        # Modules of others that have no stubs here are none of this module's business.
        pathlib.Path("mypy.ini").write_text("[mypy-pandas.*]\nignore_missing_imports = True\n")

    def test_stubtest(self):
        code, text = compared(BUILD)
        self.assertEqual(code, 0, text)

    def test_stubtest_finds_what_is_wrong(self):
        wrong = pathlib.Path("wrong")
        wrong.mkdir(exist_ok=True)
        stub = STUB.read_text().replace("def futures(", "def fortunes(").replace("notice: str", "notice: int")
        (wrong / "bide.pyi").write_text(stub)
        code, text = compared(wrong)
        self.assertNotEqual(code, 0)
        for name in ("bide.Odds.fortunes", "bide.Odds.futures", "bide.notice"):
            self.assertIn(name, text)

    def test_installed(self):
        """As the package lays them: module and bide-stubs/ in a folder of modules, here that of a user."""
        shutil.rmtree("user", ignore_errors=True)
        base = str(pathlib.Path("user").absolute())
        folder = pathlib.Path(site.getusersitepackages().replace(site.getuserbase(), base))
        subprocess.run(
            ["cmake", "--install", BUILD, "--component", "python", "--prefix", "installed"], check=True, stdout=subprocess.DEVNULL
        )
        (made,) = pathlib.Path("installed").glob("lib*/python3/dist-packages")
        shutil.copytree(made, folder)
        pathlib.Path("uses.py").write_text("import bide\nreveal_type(bide.read('s.json').run().to_xarray())\nbide.read(7)\n")
        code, text = said("mypy", "--config-file", "mypy.ini", "uses.py", PYTHONUSERBASE=base, MYPYPATH="", PYTHONPATH="")
        self.assertEqual(code, 1, text)
        self.assertIn('Revealed type is "xarray.core.dataset.Dataset"', text)
        self.assertIn('incompatible type "int"', text)
        self.assertIn("Found 1 error", text)


if __name__ == "__main__":
    unittest.main()
