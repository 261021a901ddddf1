"""Proves that a signed bundle or archive of a gear register is as it was written: python verify.py BUNDLE FINGERPRINT

BUNDLE: a folder or a zip file. FINGERPRINT: of the signing key, as its owner told it on paper or by word of mouth. A
signature proves that whoever holds the key wrote this, and no more. Needs Python 3.11 and the package `cryptography`.
"""

import hashlib
import json
import pathlib
import sys
import zipfile

from cryptography.hazmat.primitives.serialization import Encoding, PublicFormat, load_pem_public_key

sys.excepthook = lambda kind, fault, _: print("NOT AS IT WAS WRITTEN:", kind.__name__, fault, file=sys.stderr)
place, told = pathlib.Path(sys.argv[1]), "".join(sys.argv[2:]).lower()
box = zipfile.ZipFile(place) if place.is_file() else None
names = box.namelist() if box else [one.relative_to(place).as_posix() for one in place.rglob("*") if not one.is_dir()]
look = box.open if box else lambda name: (place / name).open("rb")
(key := load_pem_public_key(look("public_key.pem").read())).verify(
    look("manifest.sig").read(), manifest := look("manifest.json").read()
)
own = hashlib.sha256(key.public_bytes(Encoding.Raw, PublicFormat.Raw)).hexdigest()
sums = {one["path"]: one["sha256"] for one in json.loads(manifest)["members"]}
wrong = sorted(
    one
    for one in {*names, *sums} - {"manifest.json", "manifest.sig"}
    if one not in names or hashlib.file_digest(look(one), "sha256").hexdigest() != sums.get(one)
)
if wrong or told not in ("", own) or len(names) != len({*names}):
    sys.exit(f"NOT AS IT WAS WRITTEN: changed, missing or put in: {wrong}; signed with the key {own}")
print("As it was written by the holder of the key", own)
