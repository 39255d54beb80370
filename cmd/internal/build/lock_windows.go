package build

import (
	"errors"
	"os"
	"path/filepath"

	"golang.org/x/sys/windows"
)

// tryLock opens the file for this process alone; the system removes it when
// it is closed, also by a kill. A nil release without an error says that
// another holds it.
func tryLock(root *os.Root, name string) (release func(), err error) {
	path, err := windows.UTF16PtrFromString(filepath.Join(root.Name(), name))
	if err != nil {
		return nil, err
	}
	h, err := windows.CreateFile(path, windows.GENERIC_WRITE|windows.DELETE, 0, nil, windows.OPEN_ALWAYS,
		windows.FILE_ATTRIBUTE_NORMAL|windows.FILE_FLAG_DELETE_ON_CLOSE, 0)
	switch {
	case errors.Is(err, windows.ERROR_SHARING_VIOLATION), errors.Is(err, windows.ERROR_ACCESS_DENIED) && exists(root, name):
		return nil, nil // held, or just going
	case err != nil:
		return nil, err
	}
	return func() { windows.CloseHandle(h) }, nil
}

func exists(root *os.Root, name string) bool {
	_, err := root.Lstat(name)
	return err == nil
}
