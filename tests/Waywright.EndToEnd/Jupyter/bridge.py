"""Starts the installed kernel with Debian's jupyter_client and passes messages on, a JSON object a line: what comes in on standard input goes to the kernel, what the kernel says comes out."""
import json
import os
import sys

import zmq
from jupyter_client.manager import KernelManager
from jupyter_client.session import Session

manager = KernelManager(kernel_name="waywright")
manager.start_kernel(cwd=sys.argv[1])
client = manager.blocking_client()
client.start_channels(shell=False, iopub=False, stdin=False, control=False)
stranger = Session(key=b"another key")
context = zmq.Context()
sockets = {}
for name, kind in {"shell": zmq.DEALER, "control": zmq.DEALER, "stdin": zmq.DEALER, "iopub": zmq.SUB}.items():
    sockets[name] = context.socket(kind)
    sockets[name].linger = 0
    sockets[name].identity = client.session.bsession
    if kind == zmq.SUB:
        sockets[name].subscribe(b"")
    sockets[name].connect(f"tcp://{manager.ip}:{getattr(manager, name + '_port')}")


def say(**said):
    print(json.dumps(said), flush=True)


def started():
    say(type="started", channel="bridge", content={"pid": manager.provisioner.process.pid, "file": manager.connection_file})


def obey(order):
    do = order["do"]
    if do in ("send", "forge"):
        session = client.session if do == "send" else stranger
        message = session.msg(order["type"], order["content"])
        message["header"]["msg_id"] = message["msg_id"] = order["id"]
        session.send(sockets[order["channel"]], message)
    elif do == "frames":
        sockets[order["channel"]].send_multipart([frame.encode() for frame in order["frames"]])
    elif do == "interrupt":
        manager.interrupt_kernel()
    elif do == "restart":
        manager.restart_kernel(now=False)
        started()
    elif do == "beats":
        client.hb_channel.unpause()
        say(type="beats", channel="bridge", content={"beating": client.hb_channel.is_beating(), "alive": manager.is_alive()})
    elif do == "end":
        client.stop_channels()
        manager.shutdown_kernel(now=order.get("now", False))
        say(type="ended", channel="bridge", content={"exit": manager.provisioner.process.returncode if manager.provisioner and manager.provisioner.process else None})
        sys.exit(0)


started()
poller = zmq.Poller()
for one in sockets.values():
    poller.register(one, zmq.POLLIN)
poller.register(sys.stdin.fileno(), zmq.POLLIN)
pending = b""
while True:
    ready = dict(poller.poll())
    for name, one in sockets.items():
        if one in ready:
            _, message = client.session.recv(one)
            say(type=message["header"]["msg_type"], channel=name, parent=message["parent_header"].get("msg_id"), version=message["header"]["version"], content=message["content"])
    if sys.stdin.fileno() in ready:
        came = os.read(sys.stdin.fileno(), 65536)
        if not came:
            obey({"do": "end", "now": True})
        pending += came
        while b"\n" in pending:
            line, pending = pending.split(b"\n", 1)
            obey(json.loads(line))
