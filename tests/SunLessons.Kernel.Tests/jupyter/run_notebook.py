"""Runs a small notebook through the kernel with nbclient and prints its outputs as JSON."""
import json

import kernelspec
import nbformat
from nbclient import NotebookClient

name = kernelspec.install()
notebook = nbformat.v4.new_notebook(
    metadata={"kernelspec": {"name": name, "display_name": "x", "language": "C#"}},
    cells=[
        nbformat.v4.new_markdown_cell("# Noon"),
        nbformat.v4.new_code_cell("var hours = 4; hours * 15"),
        nbformat.v4.new_code_cell('Console.WriteLine("on the way");\nConsole.Error.WriteLine("aside");'),
        nbformat.v4.new_code_cell("<p>{{ hours }} hours</p>"),
    ],
)
NotebookClient(notebook, kernel_name=name, timeout=60).execute()
nbformat.validate(notebook)
print(json.dumps([cell.get("outputs") for cell in notebook.cells if cell.cell_type == "code"]))
