#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""with_postgres.py COMMAND…: runs it with a PostgreSQL of its own; TRUEHANG_POSTGRES tells the way to it."""
import os
import subprocess
import sys

import cluster

server = cluster.Server(5432)
try:
    way = f"host={server.folder}&port={server.port}&user=truehang"
    done = subprocess.run(sys.argv[1:], check=False, env={**os.environ, "TRUEHANG_POSTGRES": way})
finally:
    server.end()
sys.exit(done.returncode)
