package book

import (
	"fmt"
	"strings"
	"testing"

	"fixslate/plan"
)

// A note is printed wherever it stands: every table of the language may have one.
func TestNotesOfEveryTable(t *testing.T) {
	written := map[string]string{
		"video": `title = "T"`, "variant": `name = "late"`, "differs": "on_camera = \"a door off\"\nviewers = \"a door\"", "source": `title = "sheet"`,
		"tool": `name = "meter"`, "part": `name = "pump"`, "supply": `name = "rag"`, "fastener": `what = "bolt"`, "fuse": `at = "fuse 3"`, "wire": `colour = "red"`,
		"spec": "what = \"gap\"\nvalue = \"1 mm\"", "term": `text = "impeller"`, "caution": `say = "Mind the edge, it cuts."`, "cause": `what = "dead pump"`, "test": `question = "Is it dead?"`,
		"claim": `text = "It lasts"`, "setup": `place = "floor"`, "step": "title = \"S\"\nsay = \"Words.\"", "waiver": `rule = "torque-unsaid"`, "correction": `now = "3 N·m"`,
		"shoot.people": `id = "ann"`, "test.reading": `expect = "1 V"`, "test.outcome": `sees = "a spark"`, "step.shot": `of = "the pump"`, "step.cue": "who = \"ann\"\ndoes = \"waits\"",
	}
	var text strings.Builder
	var names []string
	var write func(table plan.Table)
	write = func(table plan.Table) {
		open, shut := "[", "]"
		if table.List {
			open, shut = "[[", "]]"
		}
		fmt.Fprintf(&text, "%s%s%s\n%s\nnote = \"Remark on %s, *softly*.\"\n", open, table.Name, shut, written[table.Name], table.Name)
		names = append(names, table.Name)
		for _, sub := range table.Sub {
			write(sub)
		}
	}
	for _, table := range plan.Language().Sub {
		write(table)
	}
	page := string(Page(bookOf(t, "notes", []byte(text.String()))))
	for _, name := range names {
		if n := strings.Count(page, "Remark on "+name+", <em>softly</em>"); n != 1 {
			t.Errorf("the note of [%s] stands %d times in the book", name, n)
		}
	}
}

// What a reading is called begins with a capital in any alphabet.
func TestReadingNames(t *testing.T) {
	page := string(Page(bookOf(t, "readings", []byte(`
test = [{ id = "leak", question = "Tight?", reading = [{ when = "öl kalt", expect = "dry" }] }]
[video]
title = "T"
[[step]]
title = "S"
tests = ["leak"]
`))))
	if !strings.Contains(page, "Öl kalt") {
		t.Error("the reading has lost its name")
	}
}
