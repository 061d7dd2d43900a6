"""The peer of the reading benchmark: pandas.read_csv of the file that is the only argument."""
import sys
import time

import numpy
import pandas

path = sys.argv[1]


def read(count):
    for _ in range(count):
        frame = pandas.read_csv(path)
    return len(frame)


for line in sys.stdin:
    words = line.split()
    if words[0] == "versions":
        print(f"Python {sys.version.split()[0]}, NumPy {numpy.__version__}, pandas {pandas.__version__}", flush=True)
    elif words[0] == "answer":
        print(read(1), flush=True)
    else:
        start = time.perf_counter()
        read(int(words[2]))
        print(time.perf_counter() - start, flush=True)
