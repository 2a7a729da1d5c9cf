"""Times kernels as their clients see them; see README.md."""
import argparse
import datetime
import json
import os
import platform
import statistics
import sys
import tempfile
import time

from jupyter_client.manager import KernelManager
from jupyter_client.kernelspec import KernelSpecManager

HERE = os.path.dirname(os.path.abspath(__file__))
TESTS = os.path.join(HERE, "..", "..", "SunLessons.Kernel.Tests", "bin", "Release", "net10.0", "SunLessons.Kernel.Tests.dll")


def arguments():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--kernel", type=json.loads, default=["dotnet", TESTS, "kernel-host", "{connection_file}"], help="our kernel's command as JSON")
    parser.add_argument("--stock", help="path of the stock C# kernel's program")
    parser.add_argument("--also", nargs=2, action="append", default=[], metavar=("NAME", "COMMAND"), help="another kernel's name and its command as JSON")
    parser.add_argument("--rounds", type=int, default=5)
    parser.add_argument("--cells", type=int, default=200, help="cells run before the last measurements of our kernel")
    return parser.parse_args()


class Running:
    """A kernel and its client."""

    def __init__(self, name):
        self.begun = time.perf_counter()
        self.manager = KernelManager(kernel_name=name)
        self.manager.start_kernel(stderr=open(os.devnull, "w"), stdout=open(os.devnull, "w"))
        self.client = self.manager.client()
        self.client.start_channels()
        self.client.wait_for_ready(timeout=120)
        self.ready = time.perf_counter() - self.begun

    def run(self, code):
        """Runs a cell and returns the seconds until its reply and its idle status, and the types of its outputs."""
        begun = time.perf_counter()
        identifier = self.client.execute(code)
        kinds = []
        while True:
            message = self.client.get_iopub_msg(timeout=120)
            if message["parent_header"].get("msg_id") != identifier:
                continue
            kinds.append(message["msg_type"])
            if message["msg_type"] == "status" and message["content"]["execution_state"] == "idle":
                break
        while self.client.get_shell_msg(timeout=120)["parent_header"].get("msg_id") != identifier:
            pass
        return time.perf_counter() - begun, kinds

    def ask(self, send):
        begun = time.perf_counter()
        identifier = send()
        while self.client.get_shell_msg(timeout=120)["parent_header"].get("msg_id") != identifier:
            pass
        return time.perf_counter() - begun

    def memory(self):
        """Resident megabytes of the process; Linux only, None elsewhere."""
        try:
            with open("/proc/%d/status" % self.manager.provisioner.pid) as status:
                return next(int(line.split()[1]) / 1024 for line in status if line.startswith("VmRSS"))
        except (OSError, StopIteration):
            return None

    def end(self):
        self.client.stop_channels()
        self.manager.shutdown_kernel(now=True)


def ms(values, share=0.5):
    values = sorted(values)
    return 1000 * (statistics.median(values) if share == 0.5 else values[min(len(values) - 1, int(share * len(values)))])


def main():
    options = arguments()
    folder = tempfile.mkdtemp(prefix="kernel-bench-")
    specs = {"ours": {"argv": options.kernel, "display_name": "ours", "language": "C#", "interrupt_mode": "message"}}
    for name, command in options.also:
        specs[name] = {"argv": json.loads(command), "display_name": name, "language": "C#", "interrupt_mode": "message"}
    if options.stock:
        specs["stock"] = {"argv": [options.stock, "jupyter", "--default-kernel", "csharp", "{connection_file}"], "display_name": "stock", "language": "C#"}
    for name, spec in specs.items():
        os.makedirs(os.path.join(folder, "kernels", name))
        with open(os.path.join(folder, "kernels", name, "kernel.json"), "w") as out:
            json.dump(spec, out)
    os.environ["JUPYTER_PATH"] = folder
    os.environ["DOTNET_TieredPGO"] = "0"
    os.environ["DOTNET_gcConcurrent"] = "0"
    names = list(specs)
    if "python3" in KernelSpecManager().find_kernel_specs():
        names.append("python3")

    start, ready, print_first, warm, warm_print, memory = ({n: [] for n in names} for _ in range(6))
    for _ in range(options.rounds):
        for name in names:
            kernel = Running(name)
            kernel.run("1+1")
            start[name].append(time.perf_counter() - kernel.begun)
            ready[name].append(kernel.ready)
            write = 'print("sun")' if name == "python3" else 'Console.WriteLine("sun");'
            print_first[name].append(kernel.run(write)[0])
            for _ in range(5):
                kernel.run("1+1")
            warm[name] += [kernel.run("1+1")[0] for _ in range(20)]
            warm_print[name] += [kernel.run(write)[0] for _ in range(20)]
            memory[name].append(kernel.memory() or float("nan"))
            kernel.end()

    print("%s; %s; %d cores; load %s; %d rounds" % (
        datetime.date.today().isoformat(), platform.platform(), os.cpu_count(), " ".join("%.1f" % x for x in os.getloadavg()), options.rounds))
    print()
    print("| kernel | ready, s | start to `1+1`, s | first print, ms | warm `1+1`, ms | warm print, ms | resident, MB |")
    print("|---|---|---|---|---|---|---|")
    for name in names:
        print("| %s | %.2f | %.2f (%.2f to %.2f) | %.0f | %.1f | %.1f | %.0f |" % (
            name, statistics.median(ready[name]), statistics.median(start[name]), min(start[name]), max(start[name]),
            ms(print_first[name]), ms(warm[name]), ms(warm_print[name]), statistics.median(memory[name])))

    for name in ["ours"] + [name for name, _ in options.also]:
        long_session(name, options.cells)


def long_session(name, count):
    kernel = Running(name)
    kernel.run("1+1")
    before = kernel.memory()
    print()
    print("| %s after n cells | completion p50/p95, ms | while a cell runs p50/p95, ms | inspection p50/p95, ms | diagnostics p50/p95, ms | `1+1`, ms | resident, MB |" % name)
    print("|---|---|---|---|---|---|---|")
    for cells in (1, count):
        for number in range(cells - 1):
            kernel.run("var v%d = Math.Sin(%d); v%d" % (number, number, number))
        row = [
            [kernel.ask(lambda: kernel.client.complete("Console.Wri")) for _ in range(40)],
            [],
            [kernel.ask(lambda: kernel.client.inspect("Math.Sin", 6)) for _ in range(40)],
            [kernel.ask(lambda: diagnose(kernel)) for _ in range(40)],
        ]
        hot = [kernel.run("1+1")[0] for _ in range(20)]
        stops = []
        for _ in range(5):
            loop = kernel.client.execute("while (true) { }")
            while True:
                message = kernel.client.get_iopub_msg(timeout=60)
                if message["msg_type"] == "execute_input" and message["parent_header"].get("msg_id") == loop:
                    break
            time.sleep(0.3)
            row[1] += [kernel.ask(lambda: kernel.client.complete("Console.Wri")) for _ in range(8)]
            begun = time.perf_counter()
            kernel.client.control_channel.send(kernel.client.session.msg("interrupt_request", {}))
            while kernel.client.get_shell_msg(timeout=60)["parent_header"].get("msg_id") != loop:
                pass
            stops.append(time.perf_counter() - begun)
        print("| %d | %s | %s | %s | %s | %.1f | %.0f |" % (
            cells, *("%.0f / %.0f" % (ms(values), ms(values, 0.95)) for values in row), ms(hot), kernel.memory() or float("nan")))
        print("stop of an endless loop after %d cells: median %.0f ms, worst %.0f ms" % (cells, ms(stops), 1000 * max(stops)), file=sys.stderr)
    print()
    print("Memory before: %.0f MB. A moved control to the figure's update: %s." % (before or float("nan"), control(kernel)))
    kernel.end()


FAN = '''
var tilt = Number("tilt", "Tilt", 0, 90, 0.1, 42.2);
var fan = LiveFigure("fan", () => new Figure("Fan", new Axis("x"), new Axis("y"))
{
    Series = [.. Enumerable.Range(0, 24).Select(h => Series.Of("h" + h, Enumerable.Range(0, 50).Select(i => (double)i), Enumerable.Range(0, 50).Select(i => Math.Sin(tilt.Value * i / 50 + h))))],
}, tilt);
Show(tilt, fan);
'''


def control(kernel):
    """Milliseconds from a control's message to the figure's update on the wire: 100 moves, one after the other."""
    identifier = kernel.client.execute(FAN)
    models = {}
    while True:
        message = kernel.client.get_iopub_msg(timeout=60)
        if message["parent_header"].get("msg_id") != identifier:
            continue
        if message["msg_type"] == "error":
            return "not measured (%s)" % message["content"]["evalue"]
        if message["msg_type"] == "comm_open":
            models.setdefault(message["content"]["data"]["state"]["_model_name"], []).append(message["content"]["comm_id"])
        if message["msg_type"] == "status" and message["content"]["execution_state"] == "idle" and message["parent_header"].get("msg_id") == identifier:
            break
    times = []
    for number in range(110):
        data = {"method": "update", "state": {"value": 10 + number * 0.1}, "buffer_paths": []}
        begun = time.perf_counter()
        kernel.client.shell_channel.send(kernel.client.session.msg("comm_msg", {"comm_id": models["FloatSliderModel"][0], "data": data}))
        while True:
            message = kernel.client.get_iopub_msg(timeout=60)
            if message["msg_type"] == "comm_msg" and message["content"]["comm_id"] in models["HTMLModel"]:
                break
        times.append(time.perf_counter() - begun)
        time.sleep(0.02)
    return "median %.1f ms, 95 %% within %.1f ms" % (ms(times[10:]), ms(times[10:], 0.95))


def diagnose(kernel):
    message = kernel.client.session.msg("sunlessons_diagnose_request", {"code": "var x = nobody + 1;"})
    kernel.client.shell_channel.send(message)
    return message["header"]["msg_id"]


if __name__ == "__main__":
    main()
