package hazard

import "testing"

func TestLexiconCompiles(t *testing.T) {
	x, err := compile(files)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d marks, %d entries, %d rules, %d forms, %d nodes", len(x.names), len(x.entries), len(x.rules), len(x.forms), len(x.tree.ends))
}
