package build

import (
	"bytes"
	"strings"
	"testing"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/samples"
)

// The clock of the machine has no say in what is written, but for what a plan
// itself lets run out: findings, where they are printed.
func TestClock(t *testing.T) {
	text, _ := samples.Plan("van-blower")
	text = append(text, "\n[[waiver]]\nrule = \"causes-alike\"\nat = \"cause:dead-module\"\nwhy = \"the bulb tells\"\nuntil = 2026-12-31\n"...)
	src, _ := diag.NewSource("plan.toml", text)
	made := func(today plan.Date) []File {
		c := Compile(Request{Source: src, Today: today})
		files, err := c.Make(nil)
		if err != nil {
			t.Fatal(err)
		}
		return files
	}
	none := made(plan.Date{})
	for today, differ := range map[plan.Date]string{
		{Year: 1970, Month: 1, Day: 1}: "",
		{Year: 2106, Month: 2, Day: 7}: "book.html risks.md",
	} {
		var got []string
		for i, f := range made(today) {
			if f.Name != none[i].Name || !bytes.Equal(f.Bytes, none[i].Bytes) {
				got = append(got, f.Name)
			}
		}
		if strings.Join(got, " ") != differ {
			t.Errorf("in %v other files than %q differ: %v", today, differ, got)
		}
	}
}
