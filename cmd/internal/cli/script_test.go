package cli

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"fixslate":    func() { os.Exit(Main(os.Args[1:])) },
		"decode-only": decodeOnly,
	})
}

// Each script shows one command as a user runs it: exit code and both streams
// are the process's own.
func TestScripts(t *testing.T) {
	plans, err := filepath.Abs(filepath.Join("..", "..", "..", "samples"))
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       os.Getenv("FIXSLATE_UPDATE") != "",
		Setup: func(env *testscript.Env) error {
			env.Setenv("NO_COLOR", "1")
			env.Setenv("SAMPLES", plans)
			return nil
		},
	})
}
