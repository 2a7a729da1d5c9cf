"""Times kernels as their clients see them, in one run; see README.md."""
import argparse
import datetime
import glob
import json
import os
import platform
import queue
import statistics
import subprocess
import tempfile
import time

from jupyter_client.kernelspec import KernelSpecManager
from jupyter_client.manager import KernelManager

HERE = os.path.dirname(os.path.abspath(__file__))
TOP = os.path.normpath(os.path.join(HERE, "..", "..", ".."))
BUILT = os.path.join(TOP, "src", "SunLessons.App", "bin", "Release", "net10.0", "SunLessons.App.dll")
INTERACTIVE = {"SUNLESSONS_ENGINE": "interactive"}


def arguments():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--built", default=BUILT, help="our program as the README's command builds it")
    parser.add_argument("--tool", help="path of the installed tool's command")
    parser.add_argument("--stock", help="path of the stock C# kernel's command")
    parser.add_argument("--rounds", type=int, default=5, help="starts of each kernel")
    parser.add_argument("--cells", type=int, default=200, help="further cells run before the measurements of long sessions")
    return parser.parse_args()


class Running:
    """A kernel and its client."""

    def __init__(self, name):
        self.begun = time.perf_counter()
        self.manager = KernelManager(kernel_name=name)
        with open(os.devnull, "w") as nowhere:
            self.manager.start_kernel(stderr=nowhere, stdout=nowhere)
        self.client = self.manager.client()
        self.client.start_channels()
        self.client.wait_for_ready(timeout=120)
        self.ready = time.perf_counter() - self.begun

    def run(self, code):
        """Runs a cell and returns the seconds until its reply and its idle status, and its messages."""
        begun = time.perf_counter()
        identifier = self.client.execute(code)
        messages = self.until_idle(identifier)
        self.reply(identifier)
        spent = time.perf_counter() - begun
        for message in messages:
            if message["msg_type"] == "error":
                raise SystemExit("A cell failed: %s: %s\n%s" % (message["content"]["ename"], message["content"]["evalue"], code))
        return spent, messages

    def until_idle(self, identifier):
        messages = []
        while True:
            message = self.client.get_iopub_msg(timeout=120)
            if message["parent_header"].get("msg_id") == identifier:
                messages.append(message)
                if message["msg_type"] == "status" and message["content"]["execution_state"] == "idle":
                    return messages

    def reply(self, identifier):
        while True:
            message = self.client.get_shell_msg(timeout=120)
            if message["parent_header"].get("msg_id") == identifier:
                return message["content"]

    def ask(self, question):
        begun = time.perf_counter()
        question.check(self.reply(question.send(self.client)))
        return time.perf_counter() - begun

    def process(self):
        return self.manager.provisioner.pid

    def memory(self):
        """Resident megabytes of the process; not a number where the system does not tell."""
        try:
            with open("/proc/%d/status" % self.process()) as status:
                return next(int(line.split()[1]) / 1024 for line in status if line.startswith("VmRSS"))
        except OSError:
            try:
                return int(subprocess.run(["ps", "-o", "rss=", "-p", str(self.process())], capture_output=True, text=True, check=True).stdout) / 1024
            except (OSError, ValueError, subprocess.CalledProcessError):
                return float("nan")

    def processor(self):
        """Seconds of processor time that the process has used; not a number on systems without /proc."""
        try:
            with open("/proc/%d/stat" % self.process()) as stat:
                fields = stat.read().rsplit(")", 1)[1].split()
            return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")
        except OSError:
            return float("nan")

    def end(self):
        self.client.stop_channels()
        self.manager.shutdown_kernel(now=True)


class Times:
    """Seconds of each of many times, and processor milliseconds for one on the average."""

    def __init__(self, kernel, count, action):
        before = kernel.processor()
        self.seconds = [action() for _ in range(count)]
        self.processor = 1000 * (kernel.processor() - before) / count

    def __str__(self):
        return "%.1f / %.1f (%.1f)" % (ms(self.seconds), ms(self.seconds, 0.95), self.processor)


class Question:
    def __init__(self, send, check):
        self.send = send
        self.check = check


def expect(right):
    def check(content):
        if not right(content):
            raise SystemExit("A wrong answer: %s" % json.dumps(content)[:400])
    return check


def diagnose(client):
    message = client.session.msg("sunlessons_diagnose_request", {"code": "var x = nobody + 1;"})
    client.shell_channel.send(message)
    return message["header"]["msg_id"]


QUESTIONS = {
    "completion of `Console.Wri`": Question(lambda c: c.complete("Console.Wri"), expect(lambda a: a["matches"] == ["Write", "WriteLine"])),
    "completion of `v1`": Question(lambda c: c.complete("v1"), expect(lambda a: "v1" in a["matches"])),
    "completion of `words.Sel`": Question(lambda c: c.complete("words.Sel"), expect(lambda a: "Select" in a["matches"])),
    "hover on `Math.Sin`": Question(lambda c: c.inspect("Math.Sin", 6), expect(lambda a: a["found"])),
    "diagnostics": Question(diagnose, expect(lambda a: any(d["id"] == "CS0103" for d in a["diagnostics"]))),
}


def ms(values, share=0.5):
    values = sorted(values)
    return 1000 * (statistics.median(values) if share == 0.5 else values[min(len(values) - 1, int(share * len(values)))])


def kernelspec(command):
    """The argv that our program's own `jupyter add` writes: what a person's Jupyter starts. Compiles ahead where that was not done."""
    prefix = tempfile.mkdtemp(prefix="kernel-bench-prefix-")
    subprocess.run([*command, "jupyter", "add", "--prefix", prefix], check=True, stdout=subprocess.DEVNULL)
    with open(os.path.join(prefix, "share", "jupyter", "kernels", "sunlessons", "kernel.json")) as spec:
        return json.load(spec)["argv"]


def kernels(options):
    """Names of kernels, ours first, and their kernelspecs."""
    def ours(argv, env=None):
        return {"argv": argv, "display_name": "ours", "language": "csharp", "interrupt_mode": "message", "env": env or {}}

    ahead = kernelspec(["dotnet", options.built])
    specs = {"ahead": ours(ahead), "interactive": ours(ahead, INTERACTIVE), "built": ours(["dotnet", "exec", options.built, "kernel", "{connection_file}"])}
    if options.tool:
        specs["tool"] = ours(kernelspec([options.tool]))
    if options.stock:
        specs["stock"] = {"argv": [options.stock, "jupyter", "--default-kernel", "csharp", "{connection_file}"], "display_name": "stock", "language": "csharp"}
    folder = tempfile.mkdtemp(prefix="kernel-bench-")
    for name, spec in specs.items():
        os.makedirs(os.path.join(folder, "kernels", name))
        with open(os.path.join(folder, "kernels", name, "kernel.json"), "w") as out:
            json.dump(spec, out)
    os.environ["JUPYTER_PATH"] = folder
    return list(specs) + (["python3"] if "python3" in KernelSpecManager().find_kernel_specs() else [])


TITLES = {
    "ahead": "ours, compiled ahead", "interactive": "ours, compiled ahead, `SUNLESSONS_ENGINE=interactive`", "built": "ours, as built",
    "tool": "ours, the installed tool", "stock": "stock C#", "python3": "ipykernel",
}


def heading():
    print("%s; %s; %d cores; load %s" % (
        datetime.datetime.now().strftime("%Y-%m-%d %H:%M"), platform.platform(), os.cpu_count(), " ".join("%.1f" % x for x in os.getloadavg())), flush=True)


def starts(names, rounds):
    print("\n| kernel | ready, s | start to `1+1`, s | processor time, s | first print, ms | warm `1+1`, ms | warm print, ms | resident, MB |\n|---|---|---|---|---|---|---|---|")
    rows = {name: {key: [] for key in ("ready", "start", "processor", "first", "warm", "print", "memory", "load")} for name in names}
    costs = {name: {"warm": [], "print": []} for name in names}
    for _ in range(rounds):
        # Kernels take turns, so that a machine that becomes slower meanwhile is unfair to none.
        for name in names:
            kernel, row = Running(name), rows[name]
            kernel.run("1+1")
            row["start"].append(time.perf_counter() - kernel.begun)
            row["ready"].append(kernel.ready)
            row["processor"].append(kernel.processor())
            write = 'print("sun")' if name == "python3" else 'Console.WriteLine("sun");'
            row["first"].append(kernel.run(write)[0])
            for _ in range(10):
                kernel.run("1+1")
            for key, code in (("warm", "1+1"), ("print", write)):
                times = Times(kernel, 30, lambda code=code: kernel.run(code)[0])
                row[key] += times.seconds
                costs[name][key].append(times.processor)
            row["memory"].append(kernel.memory())
            kernel.end()
    for name in names:
        row = rows[name]
        print("| %s | %.2f | %.2f (%.2f to %.2f) | %.2f | %.0f | %.1f (%.1f) | %.1f (%.1f) | %.0f |" % (
            TITLES[name], statistics.median(row["ready"]), statistics.median(row["start"]), min(row["start"]), max(row["start"]),
            statistics.median(row["processor"]), ms(row["first"]), ms(row["warm"]), statistics.median(costs[name]["warm"]),
            ms(row["print"]), statistics.median(costs[name]["print"]), statistics.median(row["memory"])))
    middle = {name: statistics.median(rows[name]["start"]) for name in names}
    for other in ("stock", "python3"):
        if other in middle:
            print("\nStart to `1+1` in parts of %s's: %s." % (
                TITLES[other], ", ".join("%s %.2f" % (TITLES[name], middle[name] / middle[other]) for name in names if name not in ("stock", "python3"))), end="")
    print("\n", flush=True)


def further(kernel, count):
    for number in range(count):
        kernel.run("var v%d = Math.Sin(%d); v%d" % (number, number, number))


def questions(name, count):
    """Language questions after many cells, at rest and while a cell runs, and how soon that cell stops."""
    kernel = Running(name)
    kernel.run('var words = new List<string> { "sun" };')
    further(kernel, count)
    rest = {title: Times(kernel, 60, lambda q=q: kernel.ask(q)) for title, q in QUESTIONS.items()}
    busy = {title: [] for title in QUESTIONS}
    stops = []
    for _ in range(6):
        loop = kernel.client.execute("while (true) { }")
        while True:
            message = kernel.client.get_iopub_msg(timeout=60)
            if message["msg_type"] == "execute_input" and message["parent_header"].get("msg_id") == loop:
                break
        time.sleep(0.3)
        for title, question in QUESTIONS.items():
            busy[title] += [kernel.ask(question) for _ in range(10)]
        begun = time.perf_counter()
        kernel.client.control_channel.send(kernel.client.session.msg("interrupt_request", {}))
        kernel.reply(loop)
        stops.append(time.perf_counter() - begun)
        kernel.until_idle(loop)
    warm = Times(kernel, 40, lambda: kernel.run("1+1")[0])
    write = Times(kernel, 40, lambda: kernel.run('Console.WriteLine("sun");')[0])
    print("| %s, %d cells | at rest: median / 95 %% (processor), ms | while a cell runs: median / 95 %%, ms |\n|---|---|---|" % (TITLES[name], count))
    for title in QUESTIONS:
        print("| %s | %s | %.1f / %.1f |" % (title, rest[title], ms(busy[title]), ms(busy[title], 0.95)))
    print("| `1+1` run | %s | |\n| print | %s | |" % (warm, write))
    print("\nAn endless loop stopped after a median of %.0f ms, at the longest %.0f ms.\n" % (ms(stops), 1000 * max(stops)), flush=True)
    kernel.end()


def peers(name, count):
    kernel = Running(name)
    for number in range(count):
        kernel.run("import math; v%d = math.sin(%d); v%d" % ((number,) * 3) if name == "python3" else "var v%d = Math.Sin(%d); v%d" % ((number,) * 3))
    code = "print" if name == "python3" else "Console.Wri"
    question = Question(lambda c: c.complete(code), expect(lambda a: a["status"] == "ok"))
    print("%s after %d cells: completion of `%s` %s ms, %.0f MB.\n" % (TITLES[name], count, code, Times(kernel, 15, lambda: kernel.ask(question)), kernel.memory()), flush=True)
    kernel.end()


def lesson(name, path, count):
    """Resident megabytes with all cells of a lesson run, and after further cells."""
    with open(path, encoding="utf-8") as file:
        cells = [cell for cell in json.load(file)["cells"] if cell["cell_type"] == "code"]
    kernel = Running(name)
    for cell in cells:
        kernel.run("".join(cell["source"]))
    opened = kernel.memory()
    further(kernel, count)
    after = kernel.memory()
    kernel.end()
    return opened, after


def memory(names, count):
    paths = sorted(glob.glob(os.path.join(TOP, "lessons", "*", "lesson.ipynb")))
    print("| resident, MB (cells of the lesson run, then %d more) | %s |\n|---|%s" % (count, " | ".join(TITLES[name] for name in names), "---|" * len(names)))
    for path in paths:
        print("| %s | %s |" % (os.path.basename(os.path.dirname(path)), " | ".join("%.0f, then %.0f" % lesson(name, path, count) for name in names)), flush=True)
    print()


FAN = '''
var tilt = Number("tilt", "Tilt", 0, 90, 0.1, 42.2);
var fan = LiveFigure("fan", () => new Figure($"Fan at {tilt.Value:0.0}", new Axis("x"), new Axis("y"))
{
    Series = [.. Enumerable.Range(0, 24).Select(h => Series.Of("h" + h, Enumerable.Range(0, 50).Select(i => (double)i), Enumerable.Range(0, 50).Select(i => Math.Sin(tilt.Value * i / 50 + h))))],
}, tilt);
Show(tilt, fan);
'''


def wire(name, count):
    """From a control's message to the figure's update on the wire, one move after the other; then a burst, of which the newest must stand."""
    kernel = Running(name)
    further(kernel, count)
    models = {}
    for message in kernel.run(FAN)[1]:
        if message["msg_type"] == "comm_open":
            models.setdefault(message["content"]["data"]["state"]["_model_name"], []).append(message["content"]["comm_id"])

    def move(value):
        data = {"method": "update", "state": {"value": value}, "buffer_paths": []}
        message = kernel.client.session.msg("comm_msg", {"comm_id": models["FloatSliderModel"][0], "data": data})
        kernel.client.shell_channel.send(message)
        return message["header"]["msg_id"]

    def drawn(value):
        """Waits until the figure of a value is on the wire; returns how many updates of the figure came."""
        updates = 0
        while True:
            message = kernel.client.get_iopub_msg(timeout=60)
            if message["msg_type"] == "comm_msg" and message["content"]["comm_id"] in models["HTMLModel"]:
                updates += 1
                if "Fan at %.1f" % value in json.dumps(message["content"]["data"]):
                    return updates

    values = iter([10 + number * 0.1 for number in range(130)])

    def timed():
        time.sleep(0.02)
        value = next(values)
        begun = time.perf_counter()
        move(value)
        drawn(value)
        return time.perf_counter() - begun

    for _ in range(10):
        timed()
    times = Times(kernel, 120, timed)
    begun = time.perf_counter()
    for number in range(200):
        move(30 + number * 0.1)
    updates = drawn(30 + 199 * 0.1)
    spent = time.perf_counter() - begun
    # Nothing older may come behind the newest.
    while True:
        try:
            message = kernel.client.get_iopub_msg(timeout=1)
        except queue.Empty:
            break
        if message["msg_type"] == "comm_msg" and "Fan at" in json.dumps(message["content"]["data"]) and "Fan at 49.9" not in json.dumps(message["content"]["data"]):
            raise SystemExit("After a burst of moves an older figure came behind the newest.")
    print("%s, %d cells: a control's message to the figure's update on the wire, 24 lines of 50 points: %s ms (median / 95 %%, processor). 200 moves in a burst: the newest stands after %.0f ms, in %d updates.\n" % (
        TITLES[name], count, times, 1000 * spent, updates), flush=True)
    kernel.end()


def main():
    options = arguments()
    names = kernels(options)
    heading()
    starts(names, options.rounds)
    for name in ("ahead", "interactive"):
        questions(name, options.cells)
    for name in names:
        if name in ("stock", "python3"):
            peers(name, options.cells)
    memory(("ahead", "interactive"), options.cells)
    for name in ("ahead", "interactive"):
        wire(name, options.cells)
    heading()


if __name__ == "__main__":
    main()
