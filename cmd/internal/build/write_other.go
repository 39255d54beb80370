//go:build !linux

package build

import (
	"errors"
	"io/fs"
	"os"
)

// Elsewhere than on Linux a target is always moved into file by file: there is
// no asking who stands in the folder, and a swap would pull it away from them.

func occupied(string) bool { return true }

func exchange(*os.Root, string, string) error { return errors.ErrUnsupported }

func startWriting(*os.File) {}

func mountPoint(real string) bool { return otherDevice(real) }

func sameOwner(a, b fs.FileInfo) bool { return false }

func plainAttributes(string) bool { return false }
