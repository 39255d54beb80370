// Package samples holds the example plans that ship inside the program: whole
// plans to read and to copy from, the smallest plan that works, and the
// commented starter of a new plan.
//
// Out come bytes of TOML and names; nothing goes in. The package never reads a
// plan: what the bytes mean is package plan's business.
package samples

import (
	"embed"
	"path"
	"slices"
)

//go:embed */plan.toml minimal.toml starter.toml
var files embed.FS

// minimal is the one sample that is a file of its own beside the folders.
const minimal = "minimal"

// StarterTitle is the title in Starter, quotes and all. It stands there once, so
// that a command may put a TOML string of its own in its place.
const StarterTitle = `"NAME"`

// Names are the names that Plan knows, sorted.
func Names() []string {
	names := []string{minimal}
	plans, _ := files.ReadDir(".") // an embedded root can't fail
	for _, entry := range plans {
		if entry.IsDir() {
			names = append(names, entry.Name())
		}
	}
	slices.Sort(names)
	return names
}

// Plan is the sample of that name as it was written. Samples use no other files,
// so a copy of these bytes is a copy of the sample.
func Plan(name string) ([]byte, bool) {
	if !slices.Contains(Names(), name) {
		return nil, false
	}
	file := path.Join(name, "plan.toml")
	if name == minimal {
		file = minimal + ".toml"
	}
	return read(file), true
}

// Starter is the plan that a new one begins with: short, whole, every often
// needed key explained once. It is valid as it stands; its title is
// StarterTitle.
func Starter() []byte { return read("starter.toml") }

// read is one embedded file. A missing one is a fault of the build.
func read(file string) []byte {
	text, err := files.ReadFile(file)
	if err != nil {
		panic(err)
	}
	return text
}
