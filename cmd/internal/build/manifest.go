package build

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
)

// manifestName is the file by which a folder is known to be ours.
const manifestName = "manifest.json"

// manifestMax bounds what is read as a manifest, in bytes; ours have some 4 kB.
const manifestMax = 1 << 20

// manifest is manifest.json. It holds no clock and no path of the machine:
// the same plan gives the same bytes everywhere.
type manifest struct {
	Fixslate string  `json:"fixslate"`    // version
	PlanSum  string  `json:"plan_sha256"` // hex
	Files    []entry `json:"files"`       // by name; the manifest itself is not among them
}

// entry is one file of the manifest. Fixslate and PlanSum are there only
// where they differ from the manifest's own: after `build --only` the other
// files may come from an older plan, and the manifest must not say otherwise.
type entry struct {
	Name     string `json:"name"`
	Size     int    `json:"size"`
	Sum      string `json:"sha256"`
	Set      string `json:"set,omitempty"`
	Fixslate string `json:"fixslate,omitempty"`
	PlanSum  string `json:"plan_sha256,omitempty"`
}

// newManifest lists files that stand alone in their folder: fixslate's version,
// the SHA-256 of the plan, and name, size in bytes and SHA-256 of each.
func newManifest(t Target, files []File) *manifest {
	m := &manifest{Fixslate: t.Version, PlanSum: t.PlanSum}
	for _, f := range files {
		m.Files = append(m.Files, entry{Name: f.Name, Size: len(f.Bytes), Sum: Sum(f.Bytes), Set: t.Set})
	}
	return m
}

// keep takes over an entry of an older manifest, with its origin.
func (m *manifest) keep(e entry, from *manifest) {
	e.Fixslate = cmp.Or(e.Fixslate, from.Fixslate)
	if e.Fixslate == m.Fixslate {
		e.Fixslate = ""
	}
	e.PlanSum = cmp.Or(e.PlanSum, from.PlanSum)
	if e.PlanSum == m.PlanSum {
		e.PlanSum = ""
	}
	m.Files = append(m.Files, e)
}

// bytes is the manifest.json: JSON with one line a file, sorted by name, so that
// two of them compare well in a diff.
func (m *manifest) bytes() []byte {
	slices.SortFunc(m.Files, func(a, b entry) int { return strings.Compare(a.Name, b.Name) })
	var b bytes.Buffer
	fmt.Fprintf(&b, "{\n  \"fixslate\": %s,\n  \"plan_sha256\": %s,\n  \"files\": [", mustJSON(m.Fixslate), mustJSON(m.PlanSum))
	for i, e := range m.Files {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString("\n    ")
		b.Write(mustJSON(e))
	}
	b.WriteString("\n  ]\n}\n")
	return b.Bytes()
}

// mustJSON encodes strings and entries, which can't fail.
func mustJSON(v any) []byte {
	b, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	return b
}

// readManifest decodes a manifest of ours. It refuses what it can't vouch
// for: the names in it decide which files a build may remove.
func readManifest(data []byte) (*manifest, error) {
	var m struct {
		manifest
		Fixslate *string `json:"fixslate"`
	}
	if err := json.Unmarshal(data, &m); err != nil {
		return nil, fmt.Errorf("broken: %w", err)
	}
	if m.Fixslate == nil || m.Files == nil {
		return nil, errors.New("not one of fixslate's")
	}
	m.manifest.Fixslate = *m.Fixslate
	seen := map[string]bool{}
	for _, e := range m.Files {
		switch {
		case !validName(e.Name) || fold(e.Name) == manifestName:
			return nil, fmt.Errorf("broken: it lists a file %q", e.Name)
		case seen[e.Name]:
			return nil, fmt.Errorf("broken: it lists %q twice", e.Name)
		case e.Size < 0 || len(e.Sum) != 2*sha256.Size:
			return nil, fmt.Errorf("broken: no size and sum for %q", e.Name)
		}
		seen[e.Name] = true
	}
	return &m.manifest, nil
}

// validName holds for a slash path that stays inside its folder on every
// system and has no surprises for a terminal.
func validName(name string) bool {
	return fs.ValidPath(name) && name != "." &&
		filepath.IsLocal(filepath.FromSlash(name)) &&
		!strings.ContainsFunc(name, func(r rune) bool { return r < ' ' || r == 0x7f || r == '\\' || r == ':' })
}

// fold is the form in which two names are one on a file system that ignores
// case. Our own names are ASCII, so simple folding is enough.
func fold(name string) string { return strings.ToLower(name) }

// Sum is the SHA-256 of a file in hex, as it stands in manifests and reviews.
func Sum(data []byte) string {
	s := sha256.Sum256(data)
	return hex.EncodeToString(s[:])
}
