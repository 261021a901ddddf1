"""Which kind of disk a register lies on. A network drive locks and maps files otherwise than a disk of the machine."""

import os
import sys
from pathlib import Path

_MOUNTS = Path("/proc/mounts")
# As the kernel calls them. What lies behind "fuse." may be anything, so it is taken for a drive that is not here;
# a "fuseblk" is a local disk of another make.
_REMOTE = frozenset({
    "nfs", "nfs4", "cifs", "smb3", "smbfs", "ncpfs", "afs", "coda", "9p", "virtiofs", "vboxsf", "prl_fs", "ceph",
    "lustre", "gfs2", "ocfs2", "fuse",
})  # fmt: skip
_WINDOWS_REMOTE_DRIVE = 4


def remote_kind(file: Path, mounts: str | None = None) -> str:
    """The kind of network drive a file lies on; "" for a disk of this machine, and where it cannot be told.

    mounts: the table of mounted file systems as Linux writes it; this machine's where none is given.
    """
    if sys.platform == "win32":
        return _windows_kind(file)
    if mounts is None:
        mounts = _MOUNTS.read_text("utf-8", "replace") if _MOUNTS.is_file() else ""
    kind = _kind_of(os.path.realpath(file), mounts)
    return kind if kind in _REMOTE or kind.startswith("fuse.") else ""


def _kind_of(path: str, mounts: str) -> str:
    """The file system of the longest mount point above the path; of two at one place the later hides the earlier."""
    longest, found = "", ""
    for line in mounts.splitlines():
        columns = line.split(" ")
        if len(columns) < 3:
            continue
        point = columns[1].replace("\\040", " ").replace("\\011", "\t").replace("\\134", "\\")
        above = point == "/" or path == point or path.startswith(point + "/")
        if above and len(point) >= len(longest):
            longest, found = point, columns[2]
    return found


def _windows_kind(file: Path) -> str:
    import ctypes  # here: no other system asks it

    drive = file.resolve().drive
    if drive.startswith("\\\\"):
        return "unc"
    kind = ctypes.windll.kernel32.GetDriveTypeW(drive + "\\")  # type: ignore[attr-defined,unused-ignore]
    return "remote" if kind == _WINDOWS_REMOTE_DRIVE else ""
