#!/usr/bin/env python3
"""Checks an exported journal without Trivet: python3 journal-check.py FILE. Ends with 1 where something does not fit (docs/journal.md)."""
import base64
import hashlib
import json
import sys

entries, receipts, photographs, faults = {}, [], set(), []
for number, line in enumerate(open(sys.argv[1], encoding="utf-8", newline="\n"), 1):
    text = line.rstrip("\n")
    record = json.loads(text)
    if json.dumps(record, sort_keys=True, separators=(",", ":"), ensure_ascii=False) != text:
        faults.append(f"line {number}: not in the canonical form")
    digest = hashlib.sha256(text.encode()).hexdigest()
    if "receipt" in record:
        receipts.append((digest, record))
    elif "photograph" in record:
        photographs.add(record["hash"])
        if hashlib.sha256(base64.b64decode(record["bytes"])).hexdigest() != record["hash"]:
            faults.append(f"line {number}: the photograph does not have its hash")
    else:
        entries[digest] = record

previous = ""
for number, (digest, receipt) in enumerate(receipts, 1):
    if receipt["number"] != number or receipt["previous"] != previous:
        faults.append(f"receipt {receipt['number']}: does not follow the one before it")
    if receipt["entry"] not in entries:
        faults.append(f"receipt {receipt['number']}: its entry is not here, or was changed")
    previous = digest
if receipts and set(entries) - {receipt["entry"] for _, receipt in receipts}:
    faults.append("an entry has no receipt")

places = {}
for digest, entry in entries.items():
    places.setdefault((entry["device"], entry["sequence"]), []).append((digest, entry["previous"]))
for (device, sequence), here in sorted(places.items()):
    before = [digest for digest, _ in places.get((device, sequence - 1), [])] if sequence > 1 else [""]
    if len(here) > 1 or not before or any(named not in before for _, named in here):
        faults.append(f"device {device}, sequence {sequence}: " + ("written twice" if len(here) > 1 else "does not follow the one before it"))

said = [says for entry in entries.values() for says in (entry["says"], entry["says"].get("instead", {}))]
named, erased = ({says.get("photograph") for says in said if says.get("kind") == kind} for kind in ("photographed", "erased"))
faults += [f"photograph {digest}: was erased, and is here" for digest in sorted(photographs & erased)]

print(f"{len(entries)} entries, {len(receipts)} receipts, {len(photographs)} photographs, {len(named - erased - photographs)} not here, head {previous or 'none'}", *faults, sep="\n")
sys.exit(1 if faults else 0)
