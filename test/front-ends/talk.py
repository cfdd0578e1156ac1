"""Talks to the kernel as every Jupyter front end written in Python does, and prints what it was told as JSON."""

import json
import os
import subprocess
import sys
import time

from jupyter_client.manager import KernelManager


def children(pid):
    found = subprocess.run(["ps", "-o", "pid=", "--ppid", str(pid)], capture_output=True, text=True).stdout.split()
    return [pid] + [one for child in found for one in children(int(child))]


def alive(pids):
    def state(pid):
        try:
            with open(f"/proc/{pid}/stat") as file:
                return file.read().rsplit(")", 1)[1].split()[0]
        except FileNotFoundError:
            return "gone"

    return [pid for pid in pids if state(pid) not in ("gone", "Z")]


def gone(pids, seconds=10):
    end = time.time() + seconds
    while alive(pids) and time.time() < end:
        time.sleep(0.05)
    return alive(pids) == []


def start():
    manager = KernelManager(kernel_name="journalbox")
    manager.start_kernel(cwd=sys.argv[1], stderr=subprocess.DEVNULL)
    client = manager.client()
    client.start_channels()
    client.wait_for_ready(timeout=60)
    return manager, client, children(manager.provisioner.pid)


def reply_to(client, request):
    while True:
        message = client.get_shell_msg(timeout=30)
        if message["parent_header"].get("msg_id") == request:
            return message["content"]


def run(client, code, **options):
    told = []
    answer = client.execute_interactive(
        code, timeout=30, output_hook=lambda message: told.append(message["msg_type"]), **options
    )
    return {"reply": answer["content"], "told": [kind for kind in told if kind != "status"]}


manager, client, processes = start()
said = {
    "plain": run(client, "1 + 1"),
    "silent": run(client, "1 + 2", silent=True),
    "not counted": run(client, "1 + 3", store_history=False),
    "expressions": run(client, "5", user_expressions={"a": "1 + 1"}),
}
sent = [client.execute("throw new Error('first')"), client.execute("2"), client.execute("3")]
said["after an error"] = [reply_to(client, request)["status"] for request in sent]

endless = client.execute("await null; for (;;) {}")
time.sleep(0.7)
manager.interrupt_kernel()
said["interrupted"] = reply_to(client, endless)["ename"]
said["history"] = client.history(raw=True, reply=True, timeout=10)["content"]

manager.restart_kernel(now=False)
client.wait_for_ready(timeout=60)
said["gone after restart"] = gone(processes)
said["after restart"] = run(client, "1 + 1")["reply"]["execution_count"]
processes = children(manager.provisioner.pid)
manager.shutdown_kernel(now=False)
said["gone after shutdown"] = gone(processes)

manager, client, processes = start()
client.execute("await null; for (;;) {}")
time.sleep(0.5)
os.kill(processes[0], 9)
said["gone after it was killed"] = gone(processes)
print(json.dumps(said))
sys.stdout.flush()
os._exit(0)
