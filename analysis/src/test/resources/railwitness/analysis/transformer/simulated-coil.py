#!/usr/bin/env python3
"""Transformers alone on a bench, by a circuit simulator (ngspice, Debian package): what meters would read at each connection.

simulated-coil.py > simulated-coil.csv
Coupled inductors of one core with explicit leakage, winding resistance and core loss; primary A driven through a resistor.
"""
import subprocess

CASES = [  # turns p, s; inductance of one turn, H; leak of a primary half, H; ohm p, s; core ohm at p; drive Hz; input V; duty
    (4, 12, 4.06e-6, 0.065e-6, 1.1e-3, 9.3e-3, 100.0, 25e3, 13.8, 0.45),
    (3, 10, 5.20e-6, 0.040e-6, 0.7e-3, 8.0e-3, 70.0, 40e3, 12.6, 0.42),
    (6, 9, 2.30e-6, 0.120e-6, 2.4e-3, 5.1e-3, 150.0, 25e3, 24.0, 0.45),
    (5, 8, 3.10e-6, 0.090e-6, 1.6e-3, 4.4e-3, 120.0, 30e3, 13.8, 0.48),
]
SENSE, EMF = 4.7, 5.0


def windings(c):
    p, s, one, leak, rp, rs, core, hz, volts, duty = c
    lines = []
    for name, turns, ohm, leakage in (("pa", p, rp, leak), ("pb", p, rp, leak), ("sa", s, rs, leak * (s / p) ** 2),
                                      ("sb", s, rs, leak * (s / p) ** 2)):
        lines += [f"R{name} {name}1 {name}2 {ohm}", f"Ll{name} {name}2 {name}3 {leakage}", f"L{name} {name}3 {name}0 {one * turns ** 2}"]
    lines += [f"Lprobe probe 0 {one}", f"Rcore pa3 pa0 {core}"]
    names = ["Lpa", "Lpb", "Lsa", "Lsb", "Lprobe"]
    k = 0
    for i in range(5):
        for j in range(i):
            k += 1
            lines.append(f"K{k} {names[i]} {names[j]} 0.9999999")
    return lines


def run(lines, control):
    deck = "\n".join(["transformer alone"] + lines + [".control", "set numdgt=9"] + control + [".endc", ".end"]) + "\n"
    out = subprocess.run(["ngspice", "-b", "/dev/stdin"], input=deck, text=True, capture_output=True, timeout=60)
    found = {}
    for line in out.stdout.splitlines():
        part = line.split("=")
        if len(part) == 2:
            try:
                found[part[0].strip()] = float(part[1].split()[0])
            except (ValueError, IndexError):
                pass
    return found


def alone(c, shorted):
    hz = c[7]
    wired = ["Vd gen 0 AC %g" % EMF, "Rsense gen pa1 %g" % SENSE, "Vpa pa0 0 0", "Vpb pb0 0 0", "Rpbx pb1 0 1e7",
             "Vsa sa0 0 0", "Vsb sb0 0 0", "Rprobe probe 0 1e7"]
    wired += ["Rsax sa1 0 1e-6", "Rsbx sb1 0 1e-6"] if shorted else ["Rsax sa1 0 1e7", "Rsbx sb1 0 1e7"]
    ask = [f"ac lin 1 {hz} {hz}"]
    for name, what in (("pa", "vm(pa1)"), ("pb", "vm(pb1)"), ("sa", "vm(sa1)"), ("sb", "vm(sb1)"), ("one", "vm(probe)"),
                       ("resistor", "mag(v(gen)-v(pa1))"), ("both", "vm(gen)"), ("pp", "mag(v(pa1)+v(pb1))"),
                       ("ss", "mag(v(sa1)+v(sb1))")):
        ask += [f"let x{name} = {what}", f"print x{name}"]
    return run(windings(c) + wired, ask)


print("# by simulated-coil.py; " + subprocess.run(["ngspice", "--version"], text=True, capture_output=True).stdout.split("\n")[1].strip(" *"))
print("primary_turns,secondary_turns,henries_one,leak_H,primary_ohm,secondary_ohm,core_ohm,hertz,input_V,duty,"
      "pa,pb,sa,sb,one,resistor,both,pp,ss,shorted_pa,shorted_resistor")
for c in CASES:
    a, b = alone(c, False), alone(c, True)
    row = list(c) + [a["x" + n] for n in ("pa", "pb", "sa", "sb", "one", "resistor", "both", "pp", "ss")]
    row += [b["xpa"], b["xresistor"]]
    print(",".join("%.7g" % v for v in row))
