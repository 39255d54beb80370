package build

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"slices"
	"strings"
)

// holding is what a target holds before a run.
type holding struct {
	exists   bool
	manifest *manifest              // empty where there is none
	outputs  map[string]fs.FileInfo // those of the manifest, and it, by name
	users    []string               // files, links and the like that are not ours
	folders  []string               // folders that are not ours; not looked into
}

// is tells whether the output name is the very file info.
func (h *holding) is(name string, info fs.FileInfo) bool {
	mine, ok := h.outputs[name]
	return ok && os.SameFile(mine, info)
}

// bystanders are what desktops and file systems leave in a folder unasked; a
// folder that holds nothing else counts as empty.
func bystander(name string) bool {
	switch name {
	case ".DS_Store", "Thumbs.db", "desktop.ini", ".directory", "lost+found":
		return true
	}
	return strings.HasPrefix(name, "._")
}

// survey looks through the target: whose is what. It refuses a target that is
// not ours or where something of the user's stands in the way of names.
func (p *place) survey(names []string) (*holding, error) {
	h := &holding{manifest: &manifest{}, outputs: map[string]fs.FileInfo{}}
	info, err := p.there(p.dir)
	if err != nil {
		return nil, p.failed("look at it", err)
	}
	if info == nil {
		return h, nil
	}
	if !info.IsDir() { // changed since openPlace
		return nil, &Refusal{p.shown, "is not a folder", elsewhere}
	}
	h.exists = true
	ours := false
	if h.manifest, ours, err = p.manifest(); err != nil {
		return nil, err
	}
	listed := []string{manifestName}
	for _, e := range h.manifest.Files {
		listed = append(listed, e.Name)
	}
	l := look{place: p, held: h, listed: spellings(listed), names: spellings(names)}
	l.dirs = spellings(folders(slices.Concat(listed, names)))
	l.needed = spellings(folders(names))
	if err := l.into("."); err != nil {
		return nil, err
	}
	if !ours {
		return h, p.checkEmpty(h)
	}
	return h, nil
}

// manifest reads the target's manifest; ours is false where there is none.
func (p *place) manifest() (m *manifest, ours bool, err error) {
	m = &manifest{}
	data, err := readPlain(p.root, p.at(manifestName), manifestMax)
	if errors.Is(err, fs.ErrNotExist) {
		return m, false, nil
	}
	if err == nil {
		m, err = readManifest(data)
	}
	if err != nil {
		return nil, false, &Refusal{p.show(manifestName), "can't be taken for fixslate's own: " + cause(err).Error(),
			"move it and what belongs to it elsewhere, or " + elsewhere}
	}
	return m, true, nil
}

// look is one walk through a target. Its maps lead from a folded name to our
// spelling of it.
type look struct {
	place         *place
	held          *holding
	listed, names map[string]string // outputs of the manifest, of this run
	dirs, needed  map[string]string // folders of both, of this run
}

// into sorts the entries of one folder into outputs, the user's files and the
// user's folders, going down into the folders of outputs. It never follows a
// link. Where something of the user's stands in the way of this run's names,
// it refuses; a link that carries the name of an output of ours does not stand
// in the way: it is replaced itself, and what it leads to stays untouched.
func (l *look) into(dir string) error {
	p := l.place
	entries, err := readFolder(p.root, p.at(dir))
	if err != nil {
		return p.failed("look into it", err)
	}
	for _, e := range entries {
		name := path.Join(dir, e.Name())
		if p.inside() && (name == p.lock || name == p.stage) {
			continue
		}
		info, err := e.Info()
		if errors.Is(err, fs.ErrNotExist) {
			continue // gone since the folder was read
		}
		if err != nil {
			return p.failed("look into it", err)
		}
		if err := l.sort(name, info); err != nil {
			return err
		}
	}
	return nil
}

func (l *look) sort(name string, info fs.FileInfo) error {
	const moved = "move it, or " + elsewhere
	p, h := l.place, l.held
	spelled := func(names map[string]string) string { return p.spelled(p.at, names, name, info) }
	switch {
	case info.IsDir() && spelled(l.names) != "":
		return &Refusal{p.show(name), "is a folder, and fixslate writes a file of that name", moved}
	case info.IsDir() && spelled(l.dirs) == "":
		h.folders = append(h.folders, name)
	case info.IsDir() && !writable(path.Join(p.real, name)):
		return &Refusal{p.show(name), "is a folder that can't be written", "change its permissions, or " + elsewhere}
	case info.IsDir():
		return l.into(spelled(l.dirs))
	case spelled(l.needed) != "":
		return &Refusal{p.show(name), "is a file or a link, and fixslate writes a folder of that name", moved}
	case spelled(l.listed) != "":
		h.outputs[spelled(l.listed)] = info
	case spelled(l.names) != "":
		return &Refusal{p.show(name), "is not one of fixslate's files, and this build would replace it", moved}
	default:
		h.users = append(h.users, name)
	}
	return nil
}

// spelled is our spelling of the entry name in the folder that at leads to;
// empty if it is none of names. Another case is another file, unless the file
// system folds case and our spelling leads to this very entry.
func (p *place) spelled(at func(string) string, names map[string]string, name string, entry fs.FileInfo) string {
	ours, ok := names[fold(name)]
	if !ok || ours == name {
		return ours
	}
	if there, err := p.root.Lstat(at(ours)); err == nil && os.SameFile(there, entry) {
		return ours
	}
	return ""
}

func spellings(names []string) map[string]string {
	m := make(map[string]string, len(names))
	for _, name := range names {
		m[fold(name)] = name
	}
	return m
}

// checkEmpty refuses a folder without a manifest that holds anything.
func (p *place) checkEmpty(h *holding) error {
	others := slices.DeleteFunc(slices.Concat(h.users, h.folders), func(name string) bool { return bystander(path.Base(name)) })
	if len(others) == 0 {
		return nil
	}
	slices.Sort(others)
	reason := fmt.Sprintf("holds %s and no %s of fixslate's, so its files are not ours to replace", others[0], manifestName)
	if n := len(others) - 1; n > 0 {
		reason = fmt.Sprintf("holds %s, %d more and no %s of fixslate's, so its files are not ours to replace", others[0], n, manifestName)
	}
	return &Refusal{p.shown, reason, "name an empty or absent folder with -o, or empty this one"}
}

// unchanged tells whether an output still is what the manifest says. One that
// is missing, another kind of file or closed to us is not.
func (p *place) unchanged(e entry) (bool, error) {
	data, err := readPlain(p.root, p.at(e.Name), int64(e.Size))
	switch {
	case errors.Is(err, errNotPlain), errors.Is(err, errTooLarge), errors.Is(err, fs.ErrNotExist), errors.Is(err, fs.ErrPermission):
		return false, nil
	case err != nil:
		return false, err
	}
	return Sum(data) == e.Sum, nil
}

var (
	errNotPlain = errors.New("it is not a plain file")
	errTooLarge = errors.New("it is too large")
)

// readPlain reads a regular file of at most max bytes; links are not followed.
func readPlain(root *os.Root, name string, max int64) ([]byte, error) {
	info, err := root.Lstat(name)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, errNotPlain
	}
	if info.Size() > max {
		return nil, errTooLarge
	}
	f, err := root.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	var data bytes.Buffer
	data.Grow(int(info.Size()) + bytes.MinRead) // room to see its end in, too
	_, err = data.ReadFrom(io.LimitReader(f, max+1))
	return data.Bytes(), err
}

// readFolder lists a folder by name.
func readFolder(root *os.Root, name string) ([]fs.DirEntry, error) {
	f, err := root.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	entries, err := f.ReadDir(-1)
	slices.SortFunc(entries, func(a, b fs.DirEntry) int { return strings.Compare(a.Name(), b.Name()) })
	return entries, err
}
