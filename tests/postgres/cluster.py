# SPDX-License-Identifier: Apache-2.0
"""A PostgreSQL of Debian's in a folder of its own: made, started, followed by a standby, killed. As root it runs as the
user postgres, which is what it demands."""
import glob
import os
import pathlib
import shutil
import signal
import subprocess
import tempfile
import time

PROGRAMS = max(glob.glob("/usr/lib/postgresql/*/bin"), key=lambda path: int(path.split("/")[-2]), default="")
SETTINGS = """
listen_addresses = ''
unix_socket_directories = '{folder}'
port = {port}
max_connections = 60
wal_level = replica
max_wal_senders = 8
hot_standby = on
log_min_messages = warning
"""


def run(*words, check=True):
    """Runs one of PostgreSQL's programs to its end."""
    user = ["runuser", "-u", "postgres", "--"] if os.geteuid() == 0 else []
    return subprocess.run([*user, f"{PROGRAMS}/{words[0]}", *map(str, words[1:])], check=check, capture_output=True,
                          text=True, timeout=120, cwd="/")


class Server:
    """One server in `folder`/data. `port` only tells those of one folder apart: all go by sockets in the folder."""

    def __init__(self, port, like=None):
        self.folder = like.folder if like else pathlib.Path(tempfile.mkdtemp(prefix="truehang-pg-"))
        self.port = port
        self.data = self.folder / f"data{port}"
        if os.geteuid() == 0 and like is None:
            shutil.chown(self.folder, "postgres", "postgres")
        if like is None:
            run("initdb", "-D", self.data, "-U", "truehang", "--auth=trust", "-E", "UTF8", "--locale=C.UTF-8")
            self.set(SETTINGS.format(folder=self.folder, port=port))
        else:
            run("pg_basebackup", "-h", like.folder, "-p", like.port, "-U", "truehang", "-D", self.data, "-R", "-X",
                "stream", "-c", "fast")
            self.set(f"port = {port}\n")
        self.start()

    def set(self, text):
        with open(self.data / "postgresql.conf", "a", encoding="utf-8") as file:
            file.write(text)

    def start(self):
        run("pg_ctl", "-D", self.data, "-l", self.folder / f"log{self.port}", "-w", "start")

    def reload(self):
        run("pg_ctl", "-D", self.data, "reload")

    def sql(self, text, database="postgres"):
        return run("psql", "-h", self.folder, "-p", self.port, "-U", "truehang", "-d", database, "-Atqc", text).stdout

    def url(self, database):
        return f"postgresql:///{database}?host={self.folder}&port={self.port}&user=truehang"

    def processes(self):
        """Its process and those it made."""
        first = int((self.data / "postmaster.pid").read_text().split()[0])
        made = subprocess.run(["pgrep", "-P", str(first)], capture_output=True, text=True, check=False).stdout.split()
        return [first, *map(int, made)]

    def hold_receiving(self):
        """Stops the process that receives what a primary writes; SIGCONT to what is returned lets it go on."""
        for process in self.processes()[1:]:
            try:
                words = pathlib.Path(f"/proc/{process}/cmdline").read_text(encoding="utf-8")
            except FileNotFoundError:  # one that served a client and has ended meanwhile
                continue
            if "walreceiver" in words:
                os.kill(process, signal.SIGSTOP)
                return process
        raise RuntimeError("the standby receives nothing")

    def kill(self):
        """As a loss of power would: all of its processes at once, without a word."""
        processes = self.processes()
        for process in processes:
            try:
                os.kill(process, signal.SIGKILL)
            except ProcessLookupError:
                pass
        while any(os.path.exists(f"/proc/{process}") for process in processes):
            time.sleep(0.01)

    def promote(self):
        run("pg_ctl", "-D", self.data, "-w", "promote")

    def end(self):
        run("pg_ctl", "-D", self.data, "-m", "immediate", "stop", check=False)
        shutil.rmtree(self.folder, ignore_errors=True)
