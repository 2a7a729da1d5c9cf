"""Asks jupyter_core for the user's data folder under the rules of each system, and prints the cases as JSON."""
import json
import os
import sys

from jupyter_core import paths

HOME = "/home/someone"
CASES = [
    ("Unix", {}),
    ("Unix", {"XDG_DATA_HOME": "/data/share"}),
    ("Unix", {"XDG_DATA_HOME": ""}),
    ("Unix", {"JUPYTER_DATA_DIR": "/chosen", "XDG_DATA_HOME": "/data/share"}),
    ("MacOS", {}),
    ("MacOS", {"JUPYTER_DATA_DIR": "/chosen"}),
    ("Windows", {"APPDATA": "/users/someone/roaming"}),
    ("Windows", {}),
    ("Windows", {"JUPYTER_CONFIG_DIR": "/config"}),
    ("Windows", {"JUPYTER_DATA_DIR": "/chosen", "APPDATA": "/users/someone/roaming"}),
]
ASKED = ("APPDATA", "JUPYTER_CONFIG_DIR", "JUPYTER_DATA_DIR", "JUPYTER_NO_CONFIG", "XDG_DATA_HOME")


class Pretended:
    """A module whose one attribute is another; the rest is the module's own."""

    def __init__(self, module, **attributes):
        self.__dict__.update(attributes)
        self._module = module

    def __getattr__(self, name):
        return getattr(self._module, name)


answers = []
for system, variables in CASES:
    for name in ASKED:
        os.environ.pop(name, None)
    os.environ.update(variables)
    paths.get_home_dir = lambda: HOME
    paths.sys = Pretended(sys, platform={"MacOS": "darwin", "Windows": "win32", "Unix": "linux"}[system])
    paths.os = Pretended(os, name="nt" if system == "Windows" else "posix")
    answers.append({"system": system, "home": HOME, "variables": variables, "folder": paths.jupyter_data_dir()})
print(json.dumps(answers))
