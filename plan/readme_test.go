package plan_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fixslate/plan"
)

// The README's tables of keys are printed from the description that the
// decoder reads by. FIXSLATE_UPDATE=1 writes them anew.
func TestReadmeKeys(t *testing.T) {
	const from, to = "<!-- keys: printed from the decoder's own description -->\n", "<!-- end of keys -->\n"
	name := filepath.Join("..", "README.md")
	raw, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	head, rest, ok := strings.Cut(string(raw), from)
	old, tail, ok2 := strings.Cut(rest, to)
	if !ok || !ok2 {
		t.Fatalf("README.md has no place for the keys: %s%s", from, to)
	}
	var b strings.Builder
	keyTables(&b, plan.Language())
	if b.String() == old {
		return
	}
	if os.Getenv("FIXSLATE_UPDATE") == "" {
		t.Fatal("README.md's keys are not the decoder's; run the test with FIXSLATE_UPDATE=1")
	}
	if err := os.WriteFile(name, []byte(head+from+b.String()+to+tail), 0o644); err != nil {
		t.Fatal(err)
	}
}

func keyTables(b *strings.Builder, t plan.Table) {
	header := "`[" + t.Name + "]`"
	switch {
	case t.Name == "":
		header = "The top of the file"
	case t.List:
		header = "`[[" + t.Name + "]]`"
	}
	fmt.Fprintf(b, "\n**%s** – %s\n\n| key | type | if unset | example | |\n| --- | --- | --- | --- | --- |\n", header, t.Doc)
	for _, k := range t.Keys {
		switch {
		case t.Name != "" && (k.Name == "variants" || k.Name == "verify" || k.Name == "note"):
			continue // said once, above
		}
		name := "`" + k.Name + "`"
		if k.Need {
			name += " (required)"
		}
		fmt.Fprintf(b, "| %s | %s | %s | %s | %s |\n", name, k.Type, orDash(k.Default), code(k.Example), k.Doc+words(k.Words))
	}
	for _, sub := range t.Sub {
		keyTables(b, sub)
	}
}

func words(list []string) string {
	if len(list) == 0 {
		return ""
	}
	return ": " + strings.Join(list, ", ")
}

func orDash(s string) string {
	if s == "" {
		return "–"
	}
	return s
}

func code(s string) string {
	if s == "" {
		return "–"
	}
	return "`" + s + "`"
}
