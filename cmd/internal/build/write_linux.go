package build

import (
	"io/fs"
	"os"
	"strings"
	"syscall"

	"golang.org/x/sys/unix"
)

// exchange swaps two names in root at one moment; both must exist.
func exchange(root *os.Root, a, b string) error {
	dir, err := root.Open(".")
	if err != nil {
		return err
	}
	defer dir.Close()
	fd := int(dir.Fd())
	return unix.Renameat2(fd, a, fd, b, unix.RENAME_EXCHANGE)
}

// startWriting sends a file's contents on their way to the disk without waiting.
// It is a hint: whether they arrived is for fsync(2) to say.
func startWriting(f *os.File) {
	unix.SyncFileRange(int(f.Fd()), 0, 0, unix.SYNC_FILE_RANGE_WRITE)
}

// occupied tells whether a process stands in the folder or below it. After a
// swap it would stand in the old folder: a shell would show nothing, a web
// server that a phone reads the shoot book from would find no page.
// Processes of other users can't be asked and don't count.
func occupied(real string) bool {
	proc, err := os.Open("/proc")
	if err != nil {
		return true // can't tell
	}
	defer proc.Close()
	names, err := proc.Readdirnames(-1)
	for _, name := range names {
		if name[0] < '0' || name[0] > '9' {
			continue
		}
		cwd, err := os.Readlink("/proc/" + name + "/cwd")
		if err == nil && (cwd == real || strings.HasPrefix(cwd, real+"/")) {
			return true
		}
	}
	return err != nil || len(names) == 0
}

// mountPoint tells whether something is mounted on the folder, also by a bind
// mount, whose device is the same.
func mountPoint(real string) bool {
	var st unix.Statx_t
	err := unix.Statx(unix.AT_FDCWD, real, unix.AT_SYMLINK_NOFOLLOW, 0, &st)
	if err == nil && st.Attributes_mask&unix.STATX_ATTR_MOUNT_ROOT != 0 {
		return st.Attributes&unix.STATX_ATTR_MOUNT_ROOT != 0
	}
	return otherDevice(real) // a kernel before 5.8
}

func sameOwner(a, b fs.FileInfo) bool {
	x, ok := a.Sys().(*syscall.Stat_t)
	y, also := b.Sys().(*syscall.Stat_t)
	return ok && also && x.Uid == y.Uid && x.Gid == y.Gid
}

// plainAttributes tells whether a folder has no extended attributes (access
// lists among them) but those that the system gives each new folder.
func plainAttributes(real string) bool {
	buf := make([]byte, 4096)
	n, err := unix.Llistxattr(real, buf)
	if err != nil {
		return err == unix.ENOTSUP
	}
	for name := range strings.SplitSeq(string(buf[:n]), "\x00") {
		if name != "" && !strings.HasPrefix(name, "security.") {
			return false
		}
	}
	return true
}
