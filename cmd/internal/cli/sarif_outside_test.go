package cli

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"fixslate/plan/diag/outside"
)

// sarifChecker holds a log to the SARIF 2.1.0 schema (draft 4 of JSON Schema,
// as npm's @microsoft/jest-sarif ships it) with npm's ajv-draft-04.
const sarifChecker = `
const { default: Ajv } = await import("ajv-draft-04");
const { default: formats } = await import("ajv-formats");
import { readFileSync } from "node:fs";
const [schema, ...logs] = process.argv.slice(2);
const ajv = new Ajv({ allErrors: true, strict: false, unicodeRegExp: false });
formats(ajv);
const validate = ajv.compile(JSON.parse(readFileSync(schema, "utf8")));
let bad = 0;
for (const log of logs) {
  if (!validate(JSON.parse(readFileSync(log, "utf8")))) { bad++; console.log(log, JSON.stringify(validate.errors, null, 1)); }
}
process.exit(bad ? 1 : 0);
`

// What check prints as SARIF is valid by the standard's schema: faults,
// findings, a waiver as a suppression, nothing at all. The validator is shown
// to refuse a log with a level that SARIF does not have.
func TestSARIFOutside(t *testing.T) {
	outside.Program(t, "node")
	modules := outside.Modules(t, "ajv-draft-04", "ajv-formats", "@microsoft/jest-sarif")
	schema := filepath.Join(modules, "@microsoft", "jest-sarif", "lib", "schemas", "sarif-2.1.0-rtm.5.json")
	dir := t.TempDir()
	if err := os.Symlink(modules, filepath.Join(dir, "node_modules")); err != nil {
		t.Fatal(err)
	}
	write := func(name, text string) string {
		full := filepath.Join(dir, name)
		if err := os.WriteFile(full, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return full
	}
	checker := write("check.mjs", sarifChecker)
	var logs []string
	for name, plan := range map[string]string{
		"faults":   "[video]\ntitel = \"x\"\n",
		"findings": "[video]\ntitle = \"Brush <5 mm\"\n[[step]]\ntitle = \"Cover off\"\nstarts = [\"cover-off\"]\nsay = \"I think the \\u202egap is 3 mm.\"\n",
		"waived":   "[video]\ntitle = \"Brush\"\n[[step]]\ntitle = \"Cover off\"\nstarts = [\"cover-off\"]\nsay = \"Off it comes.\"\n[[waiver]]\nrule = \"refit-missing\"\nwhy = \"it is thrown away\"\n",
		"clean":    "[video]\ntitle = \"Wipe a lamp shade\"\n[publish]\nchapters_min = 1\nchapter_shortest = \"1s\"\n[[step]]\ntitle = \"Wipe it\"\nsay = \"A dry cloth, top to bottom.\"\n",
	} {
		var out bytes.Buffer
		run(context.Background(), streams{in: bytes.NewReader(nil), out: &out, err: &bytes.Buffer{}}, []string{"check", "--format", "sarif", write(name+".toml", plan)})
		logs = append(logs, write(name+".sarif", out.String()))
		if name == "waived" && !bytes.Contains(out.Bytes(), []byte(`"suppressions"`)) {
			t.Error("a waived finding is not suppressed")
		}
	}
	check := func(files ...string) error {
		out, err := exec.Command("node", append([]string{checker, schema}, files...)...).CombinedOutput()
		if err != nil {
			t.Logf("%s", out)
		}
		return err
	}
	if err := check(logs...); err != nil {
		t.Error("SARIF is not valid:", err)
	}
	if err := check(write("bad.sarif", `{"version":"2.1.0","runs":[{"tool":{"driver":{"name":"x"}},"results":[{"level":"grave","message":{"text":"x"}}]}]}`)); err == nil {
		t.Error("the validator accepts a level that SARIF does not have")
	}
}
