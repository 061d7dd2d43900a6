"""Starts kernels with Debian's jupyter_client and tells how long it took until a last cell had answered; given the folder that the kernels are described in."""
import os
import subprocess
import sys
import time

os.environ["JUPYTER_PATH"] = sys.argv[1]

import jupyter_client  # noqa: E402
from jupyter_client.manager import start_new_kernel  # noqa: E402

START = f'#r "nuget: Waywright.Notebooks, {sys.argv[2]}"\nusing Waywright;\nusing Waywright.Notebooks;\nNotebook.Start();'
CHART = 'new BeltSpan(180.mm, Quantity.Read<UnitsNet.LinearDensity>("8.4 g/m u 0.1 g/m", "density")).Tension(96.Hz)'
CELLS = {"chart": ("waywright", [START, CHART]), "own": ("waywright", ["1+1"]), "stock": ("stock", ["1+1"])}


def run(name):
    kernel, cells = CELLS[name]
    began = time.perf_counter()
    manager, client = start_new_kernel(kernel_name=kernel, startup_timeout=120, stdout=subprocess.DEVNULL)
    try:
        shown = []
        for cell in cells:
            reply = client.execute_interactive(cell, timeout=120, output_hook=shown.append)
            if reply["content"]["status"] != "ok":
                raise RuntimeError(f"{name}: {reply['content']}")
        took = time.perf_counter() - began
        wanted = "ww-plot" if name == "chart" else "2"
        if not any(wanted in str(one["content"].get("data")) for one in shown if one["msg_type"] == "execute_result"):
            raise RuntimeError(f"{name}: the last cell did not show {wanted}")
        return took
    finally:
        client.stop_channels()
        manager.shutdown_kernel(now=True)


for line in sys.stdin:
    asked = line.split()
    if asked[0] == "versions":
        print(f"jupyter_client {jupyter_client.__version__}, Python {sys.version.split()[0]}", flush=True)
    else:
        print(sum(run(asked[1]) for _ in range(int(asked[2]))), flush=True)
