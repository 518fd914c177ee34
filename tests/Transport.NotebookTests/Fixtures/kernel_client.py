"""Talks with the installed kernel as a front end does and prints what it saw, as JSON. Times are reported, not judged."""
import json
import threading
import time

import nbclient
import nbformat
from jupyter_client import KernelManager
from jupyter_client.session import Session

seen = {}
started = time.time()
manager = KernelManager(kernel_name="transport")
manager.start_kernel()
client = manager.client()
client.start_channels()
client.wait_for_ready(timeout=120)


def run(code, interrupt_after=None):
    """The cell's reply, its outputs, and how long after the interrupt it ended."""
    outputs = []
    if interrupt_after:
        threading.Timer(interrupt_after, manager.interrupt_kernel).start()
    begun = time.time()
    reply = client.execute_interactive(code, timeout=120, output_hook=outputs.append, stop_on_error=False)["content"]
    if interrupt_after:
        reply["seconds after the interrupt"] = time.time() - begun - interrupt_after
    return reply, [o["content"] | {"type": o["msg_type"]} for o in outputs if o["msg_type"] != "status"]


def show(code):
    return run(code)[1][-1]


def ask(message):
    while True:
        reply = client.get_shell_msg(timeout=60)
        if reply["parent_header"].get("msg_id") == message:
            return reply["content"]


def text(outputs):
    pieces = [o for o in outputs if o["type"] == "stream"]
    return {"characters": sum(len(p["text"]) for p in pieces), "messages": len(pieces)}


seen["result"] = show("Volume.FromLiters(2).Milliliters")
seen["seconds to the first result"] = time.time() - started
seen["spec"] = manager.kernel_spec.to_dict()
seen["info"] = ask(client.kernel_info())
seen["display"] = show('var shown = display("first");')
seen["update"] = show('shown.Update("second");')
show('var zero = 0; var remembered = "kept";')
seen["failure"] = run("var q = 1;\nvar r = 2;\nq / zero")[0]
run("int F(int a) {\n    return a / zero;\n}")
seen["called"] = run("F(1)")[0]
# Long enough that the next one is queued behind it on a busy machine too.
failing = client.execute("System.Threading.Thread.Sleep(1000);\nq / zero", stop_on_error=True)
queued = client.execute("1", stop_on_error=True)
ask(failing)
seen["queued"] = ask(queued)
seen["refusal"] = run("Volume.FromLiters(double.NaN)")[0]
seen["history"] = ask(client.history(hist_access_type="tail", n=1))["history"]
seen["completion"] = ask(client.complete('var s = "\U0001F9EA";Volume.From', 23))
seen["inspection"] = ask(client.inspect("Volume.FromLiters(2)", 17))
seen["property inspection"] = ask(client.inspect("ReferenceMembranes.Textbook.LymphaticRemoval", 40))
seen["source inspection"] = ask(client.inspect("ThreePoreMembrane", 5))
seen["initializer"] = ask(client.complete("new DialysateSample(default) { Cr", 32))
seen["complete"] = [ask(client.is_complete(code))["status"] for code in ("1 + 1", "if (true) {", "var = ;")]
seen["comms"] = ask(client.comm_info())["comms"]

# A run of the library's that would never end, and a wait.
seen["interrupted run"] = run("while (true) RegimenSimulation.Run(Patient.Example, ReferenceMembranes.MeanIncidentAdult(), "
                              "Regimen.Cycling(TimeSpan.FromHours(9), 5, Volume.FromLiters(2), DialysisSolution.Glucose136), control: Cell.Control);", 2)[0]
seen["interrupted wait"] = run("await System.Threading.Tasks.Task.Delay(TimeSpan.FromMinutes(2));", 1)[0]
seen["after the interrupt"] = show("remembered")
seen["long"] = run("for (var i = 1; i <= 4; i++) { await System.Threading.Tasks.Task.Delay(1000); Cell.Control.Progress.Report(i / 4.0); } 7")[1]
seen["task"] = run("System.Threading.Tasks.Task.Run(async () => { await System.Threading.Tasks.Task.Delay(300); return Volume.FromLiters(2); })")[1]
seen["failing task"] = run("System.Threading.Tasks.Task.Run(() => { Volume.FromLiters(double.NaN); })")[0]
seen["refused regimen"] = run("Regimen.Cycling(TimeSpan.FromHours(9), 0, Volume.FromLiters(2), DialysisSolution.Glucose136)")[0]
seen["refused sheet"] = run('SampleSheet.Read("no-such-sheet.csv").ToTest()')[0]
seen["one piece"] = text(run("Console.Write(new string('x', 10_000_000));")[1])
seen["lines"] = text(run("for (var i = 0; i < 200_000; i++) Console.WriteLine(new string('x', 49));")[1])

# Raw messages on the shell channel, right and wrong.
def answered(key, scheme="hmac-sha256"):
    session = Session(key=key, signature_scheme=scheme)
    message = session.msg("kernel_info_request", content={})
    session.send(client.shell_channel.socket, message)
    end = time.time() + 3
    while time.time() < end:
        try:
            reply = client.get_shell_msg(timeout=1)
        except Exception:
            continue
        if reply["parent_header"].get("msg_id") == message["header"]["msg_id"]:
            return True
    return False


seen["forged answered"] = answered(b"another key")
seen["unsigned answered"] = answered(b"")
seen["signed answered"] = answered(manager.session.key)

trips = []
for i in range(30):
    begun = time.time()
    run(f"{i} + 1")
    trips.append(time.time() - begun)
seen["median milliseconds of a trivial cell"] = sorted(trips)[15] * 1000


def kilobytes():
    """Of memory that the kernel occupies, after it has thrown away what it can."""
    run("for (var i = 0; i < 3; i++) { GC.Collect(2, GCCollectionMode.Aggressive, true, true); GC.WaitForPendingFinalizers(); }")
    with open(f"/proc/{manager.provisioner.process.pid}/status") as status:
        return int(next(line for line in status if line.startswith("VmRSS")).split()[1])


def kilobytes_per_cell(code, cells=300):
    before = kilobytes()
    for i in range(cells):
        run(code.format(i))
    return (kilobytes() - before) / cells


for i in range(100):
    run(f"{i} + 2")
seen["kilobytes of a trivial cell"] = kilobytes_per_cell("{} + 3")
seen["kilobytes of a cell with a variable"] = kilobytes_per_cell("var v{0} = {0};")

seen["endless"] = run("while (true) { }", 1)[0]
seen["behind the endless"] = run("1")[0]
manager.restart_kernel()
client.wait_for_ready(timeout=120)
seen["restarted"] = show("3 + 3")
process = manager.provisioner.process
client.stop_channels()
manager.shutdown_kernel()
seen["alive after shutdown"] = process.poll() is None

notebook = nbformat.v4.new_notebook(cells=[nbformat.v4.new_code_cell("40 + 2"), nbformat.v4.new_code_cell(
    "DwellSimulation.Run(Patient.Example, ReferenceMembranes.MeanIncidentAdult(), new Dwell(DialysisSolution.Glucose136, Volume.FromLiters(2), "
    "TimeSpan.FromHours(4), ResidualFluid.Used(Volume.FromMilliliters(250), Patient.Example.Plasma)))")])
nbclient.NotebookClient(notebook, kernel_name="transport", timeout=120).execute()
seen["nbclient"] = [cell["outputs"][0] for cell in notebook.cells]

print(json.dumps(seen))
