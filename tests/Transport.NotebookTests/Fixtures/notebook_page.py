"""Opens a notebook on a notebook server of its own in a real browser, runs its cells by keyboard, and prints what the page shows, as JSON."""
import json
import os
import socket
import subprocess
import sys
import time

from selenium import webdriver
from selenium.webdriver.chrome.options import Options
from selenium.webdriver.chrome.service import Service
from selenium.webdriver.common.action_chains import ActionChains
from selenium.webdriver.common.keys import Keys
import nbformat

CHART = """DwellSimulation.Run(Patient.Example, ReferenceMembranes.MeanIncidentAdult(), new Dwell(DialysisSolution.Glucose136,
    Volume.FromLiters(2), TimeSpan.FromHours(4), ResidualFluid.Used(Volume.FromMilliliters(250), Patient.Example.Plasma)))"""

os.makedirs("page", exist_ok=True)
notebook = nbformat.v4.new_notebook(
    cells=[nbformat.v4.new_code_cell(code) for code in ("40 + 2", CHART, CHART)],
    metadata={"kernelspec": {"name": "transport", "display_name": "Transport (C#)", "language": "C#"}})
nbformat.write(notebook, "page/chart.ipynb")

with socket.socket() as free:
    free.bind(("127.0.0.1", 0))
    port = free.getsockname()[1]
server = subprocess.Popen(
    [sys.executable, "-m", "notebook", "--no-browser", "--allow-root", "--ip=127.0.0.1", f"--port={port}", "--NotebookApp.token=",
     "--NotebookApp.password=", "--NotebookApp.notebook_dir=page"],
    stdout=subprocess.DEVNULL, stderr=open("server.log", "w"))
options = Options()
for argument in ("--headless=new", "--no-sandbox", "--disable-gpu", "--window-size=1400,1200", "--disable-background-networking",
                 "--disable-component-update", "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1", f"--user-data-dir={os.path.abspath('profile')}"):
    options.add_argument(argument)
browser = webdriver.Chrome(service=Service("/usr/bin/chromedriver"), options=options)


def wait(condition, seconds=120):
    end = time.time() + seconds
    while time.time() < end:
        try:
            if found := browser.execute_script("return " + condition):
                return found
        except Exception:
            pass
        time.sleep(0.2)
    return None


seen = {}
try:
    for _ in range(100):
        try:
            browser.get(f"http://127.0.0.1:{port}/notebooks/chart.ipynb")
            break
        except Exception:
            time.sleep(0.3)
    seen["kernel ready"] = wait("window.Jupyter && Jupyter.notebook && Jupyter.notebook.kernel && Jupyter.notebook.kernel.info_reply.status === 'ok'")
    wait("document.querySelector('.cell.selected')")
    browser.execute_script("Jupyter.notebook.select(0); Jupyter.notebook.focus_cell();")
    keys = ActionChains(browser)
    for _ in range(3):
        keys.key_down(Keys.SHIFT).send_keys(Keys.ENTER).key_up(Keys.SHIFT)
    keys.perform()
    seen["first output"] = wait("document.querySelector('.cell .output_result pre') && document.querySelector('.cell .output_result pre').textContent.trim()")
    seen["charts drawn"] = wait("document.querySelectorAll('.transport-chart[data-live] .live .main-svg').length >= 2 "
                                "&& document.querySelectorAll('.transport-chart[data-live]').length")
    seen["lines drawn"] = browser.execute_script("return document.querySelectorAll('.transport-chart .scatterlayer path.js-line').length")
    seen["scripts fetched"] = browser.execute_script("return [...document.scripts].filter(s => s.src.includes('charts.js')).length")
    browser.save_screenshot("page.png")
finally:
    browser.quit()
    server.terminate()
    server.wait(20)

print(json.dumps(seen))
