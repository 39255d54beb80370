package cli

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"fixslate/cmd/internal/build"
	"fixslate/plan"
	"fixslate/plan/diag"
)

// read reads a plan, "-" being standard input. Errors are of the machine or of
// the path; what is wrong with the text comes back in the request.
func read(s streams, name string) (build.Request, error) {
	raw, shown, err := slurpUpTo(s, name, aPlan, diag.MaxBytes)
	if err != nil {
		return build.Request{}, err
	}
	return request(raw, shown, name), nil
}

// request is what read makes of a plan's bytes.
func request(raw []byte, shown, name string) build.Request {
	src, faults := diag.NewSource(shown, raw)
	now := time.Now()
	r := build.Request{Source: src, Faults: faults, Today: plan.Date{Year: now.Year(), Month: int(now.Month()), Day: now.Day()}}
	if name != "-" {
		r.Files = folder(filepath.Dir(name))
	}
	return r
}

// folder is the plan's folder and what is below it: a link that leads out is
// refused. It is opened only for plans that use files, and not kept open: one
// check may read ten thousand plans.
type folder string

func (f folder) Open(name string) (fs.File, error) {
	root, err := os.OpenRoot(string(f))
	if err != nil {
		return nil, err
	}
	defer root.Close()
	// A pipe would be waited for as it is opened, without end.
	if info, err := root.Stat(filepath.FromSlash(name)); err == nil && !info.Mode().IsRegular() && !info.IsDir() {
		return nil, &fs.PathError{Op: "open", Path: name, Err: errors.New("it is no ordinary file")}
	}
	return root.FS().Open(name)
}

// compiled reads a plan and compiles it, but for the day. Findings are named
// beside the command's product; faults end it.
func compiled(s streams, name string) (*build.Compiled, error) {
	r, err := read(s, name)
	if err != nil {
		return nil, err
	}
	return finished(s, build.Read(r))
}

// finished names the findings of what was made of a plan.
func finished(s streams, c build.Compiled) (*build.Compiled, error) {
	diag.Sort(c.Findings)
	if c.Plan == nil {
		return nil, faulted(s, c.Findings)
	}
	if err := mention(s, c.Findings, c.Source); err != nil {
		return nil, err
	}
	return &c, nil
}

// faulted prints the faults of a plan, which end every command but check.
func faulted(s streams, faults []diag.Finding) error {
	if err := complain(s, faults); err != nil {
		return err
	}
	return errFaulted
}

// ended ends a command that has printed its product, err being what the last
// print said.
func ended(w *paper, err error, f failOn, c *build.Compiled) error {
	if err := w.done(err); err != nil {
		return err
	}
	return f.verdict(c.Findings)
}

// slurpUpTo reads a whole file, "-" being standard input, but at most one byte
// over the limit: the reader below says that it is too large. Folders, pipes
// and devices are refused by name, before anything is read; wanted says in
// words what to name instead.
func slurpUpTo(s streams, name, wanted string, limit int64) (raw []byte, shown string, err error) {
	shown = "standard input"
	if name == "-" {
		raw, err = io.ReadAll(io.LimitReader(s.in, limit+1))
	} else {
		shown = filepath.ToSlash(name)
		info, bad := os.Stat(name)
		if bad != nil {
			return nil, shown, unreadable(name, wanted, bad)
		}
		if info.IsDir() {
			instead := "name " + wanted
			if inner := filepath.Join(name, "plan.toml"); wanted == aPlan && exists(inner) {
				instead = "name the plan in it: " + inner
			}
			return nil, shown, fmt.Errorf("%s: is a folder; %s", name, instead)
		}
		if !info.Mode().IsRegular() {
			return nil, shown, fmt.Errorf("%s: is no ordinary file; name %s, or - for standard input", name, wanted)
		}
		file, bad := os.Open(name)
		if bad != nil {
			return nil, shown, unreadable(name, wanted, bad)
		}
		defer file.Close()
		raw, err = whole(file, limit)
	}
	if err != nil {
		return nil, shown, unreadable(shown, wanted, err)
	}
	return raw, shown, nil
}

// still is a file that shows whether it was written to meanwhile.
type still interface {
	io.ReadSeeker
	Stat() (fs.FileInfo, error)
}

// whole reads a file that stands still while it is read: an editor that saves
// in place must not leave half of the old text beside half of the new one. It
// gives up on a file that is written to all the time.
func whole(file still, limit int64) ([]byte, error) {
	before, err := file.Stat()
	for tries := 0; err == nil && tries < 5; tries++ {
		if _, err = file.Seek(0, io.SeekStart); err != nil {
			return nil, err
		}
		var raw bytes.Buffer
		raw.Grow(int(min(before.Size(), limit)) + bytes.MinRead) // else a plan is read in ten pieces
		if _, err := raw.ReadFrom(io.LimitReader(file, limit+1)); err != nil {
			return nil, err
		}
		after, err := file.Stat()
		if err != nil {
			return nil, err
		}
		if after.Size() == before.Size() && after.ModTime().Equal(before.ModTime()) {
			return raw.Bytes(), nil
		}
		before = after
	}
	if err != nil {
		return nil, err
	}
	return nil, errors.New("it is being written to; try again when it is saved")
}

// What a command's argument names.
const (
	aPlan       = "a plan, a .toml file"
	paceFile    = "a pace file, as fixslate pace -o writes it"
	workFile    = "a file of lines like pump-in = \"12m\""
	captionFile = "a caption file: .srt, .vtt, .ttml, .ssa, .ass or .stl"
	shotsMade   = "a text file with the shots that are made, as the book copies them out"
)

func unreadable(name, wanted string, err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist) && wanted == aPlan:
		return fmt.Errorf("%s: is not there; fixslate new NAME writes a plan to start from", name)
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: is not there; name %s", name, wanted)
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("%s: may not be read; check its permissions", name)
	}
	var at *fs.PathError
	if errors.As(err, &at) {
		err = at.Err
	}
	return fmt.Errorf("%s: can't be read: %w", name, err)
}

func exists(name string) bool {
	info, err := os.Stat(name)
	return err == nil && info.Mode().IsRegular()
}
