"""Runs one lesson with nbclient from a clean kernel, saves what it gave, and prints what a test asks about, as JSON.

Arguments: the lesson's notebook, the file to save.
"""
import json
import sys

import nbformat
from nbclient import NotebookClient

source, target = sys.argv[1:]
notebook = nbformat.read(source, as_version=4)
# What is asked here is what a clean kernel gives, so nothing saved may be left.
for cell in notebook.cells:
    if cell.cell_type == "code":
        cell.outputs = []
        cell.execution_count = None
NotebookClient(notebook, kernel_name="sunlessons", timeout=120, allow_errors=True, store_widget_state=True).execute()
nbformat.validate(notebook)
nbformat.write(notebook, target)

VIEW = "application/vnd.jupyter.widget-view+json"
STATE = "application/vnd.jupyter.widget-state+json"
code = [cell for cell in notebook.cells if cell.cell_type == "code"]
outputs = [(cell.id, output) for cell in code for output in cell.outputs]
state = notebook.metadata.get("widgets", {}).get(STATE, {}).get("state", {})
views = [output.data[VIEW]["model_id"] for _, output in outputs if VIEW in output.get("data", {})]


def reachable(start):
    """Every model that is needed to show these."""
    seen, waiting = set(), list(start)
    while waiting:
        model = waiting.pop()
        if model in seen:
            continue
        seen.add(model)
        text = json.dumps(state.get(model, {}))
        waiting += [part.split('"')[0] for part in text.split("IPY_MODEL_")[1:]]
    return seen


needed = reachable(views)
print(
    json.dumps(
        {
            "cells": len(code),
            "not_run": [cell.id for cell in code if cell.execution_count is None],
            "errors": [f"{cell}: {output.ename}: {output.evalue}" for cell, output in outputs if output.output_type == "error"],
            "on_stderr": [f"{cell}: {output.text}" for cell, output in outputs if output.output_type == "stream" and output.name == "stderr"],
            "views": len(views),
            "models": len(needed),
            "models_not_saved": sorted(needed - set(state)),
            "saved_figures": sum("<svg" in str(state.get(model, {}).get("state", {}).get("value", "")) for model in needed),
        }
    )
)
