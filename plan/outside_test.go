package plan_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"fixslate/plan"
	"fixslate/plan/diag/outside"
)

// checker reads a TOML file with one program of others and holds it to the
// schema with another: npm's smol-toml and ajv.
const checker = `
const { parse } = await import("smol-toml");
const { default: Ajv } = await import("ajv");
import { readFileSync } from "node:fs";
const [schema, ...plans] = process.argv.slice(2);
const validate = new Ajv({ allErrors: true, strict: false }).compile(JSON.parse(readFileSync(schema, "utf8")));
let bad = 0;
for (const plan of plans) {
  const value = JSON.parse(JSON.stringify(parse(readFileSync(plan, "utf8"))));
  if (!validate(value)) { bad++; console.log(plan, JSON.stringify(validate.errors, null, 1)); }
}
process.exit(bad ? 1 : 0);
`

// The schema accepts every plan in a validator of others, which reads the TOML
// with a parser of others.
func TestSchemaOutside(t *testing.T) {
	outside.Program(t, "node")
	modules := outside.Modules(t, "ajv", "smol-toml")
	dir := t.TempDir()
	if err := os.Symlink(modules, filepath.Join(dir, "node_modules")); err != nil {
		t.Fatal(err)
	}
	write := func(name string, data []byte) string {
		full := filepath.Join(dir, name)
		if err := os.WriteFile(full, data, 0o600); err != nil {
			t.Fatal(err)
		}
		return full
	}
	args := []string{write("check.mjs", []byte(checker)), write("schema.json", plan.Schema())}
	for name, text := range allPlans(t) {
		args = append(args, write(name+".toml", []byte(text)))
	}
	if out, err := exec.Command("node", args...).CombinedOutput(); err != nil {
		t.Errorf("%v\n%s", err, out)
	}
}
