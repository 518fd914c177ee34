"""Runs every notebook of a directory through the installed kernel; prints, for each, its error or how many cells gave an output."""
import json
import pathlib
import sys

import nbclient
import nbformat

directory = pathlib.Path(sys.argv[1])
said = {}
for path in sorted(directory.glob("*.ipynb")):
    notebook = nbformat.read(path, as_version=4)
    for cell in notebook.cells:
        if cell.cell_type == "code":
            cell.outputs = []
    try:
        nbclient.NotebookClient(notebook, kernel_name="transport", timeout=120, resources={"metadata": {"path": str(directory)}}).execute()
        said[path.name] = sum(1 for cell in notebook.cells if cell.cell_type == "code" and cell.outputs)
    except nbclient.exceptions.CellExecutionError as problem:
        said[path.name] = str(problem)

print(json.dumps(said))
