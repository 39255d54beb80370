//go:build unix

package build

import (
	"os"
	"path/filepath"
	"syscall"

	"golang.org/x/sys/unix"
)

// writable tells whether this process may make and remove files in a folder.
// It is asked before any work, so that a refusal comes at once and in words.
func writable(real string) bool {
	return unix.Access(real, unix.W_OK|unix.X_OK) == nil
}

// otherDevice tells whether the folder lies on another device than the one
// above it.
func otherDevice(real string) bool {
	device := func(path string) (any, bool) {
		info, err := os.Lstat(path)
		if err != nil {
			return nil, false
		}
		st, ok := info.Sys().(*syscall.Stat_t)
		if !ok {
			return nil, false
		}
		return st.Dev, true
	}
	here, ok := device(real)
	above, also := device(filepath.Dir(real))
	return real == filepath.Dir(real) || ok && also && here != above
}
