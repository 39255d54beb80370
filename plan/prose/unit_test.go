package prose

import (
	"testing"

	"fixslate/plan/trade"
)

// TestUnitsOfTrade reads every unit of the trade table behind a number, as it
// is printed and as it is said.
func TestUnitsOfTrade(t *testing.T) {
	for _, row := range trade.Units() {
		for _, spelling := range []string{string(row.Unit), row.One, row.Many} {
			text := "7 " + spelling
			if spelling == row.One {
				text = "1 " + spelling
			}
			figures := Figures(text)
			switch {
			case row.Unit == "in" && spelling == "in":
				continue // "7 in" before a word may be the preposition; TestFigures has the cases
			case len(figures) != 1 || len(figures[0].Values) != 1:
				t.Errorf("%q has the figures %v", text, figures)
			case figures[0].Values[0].Unit != row.Unit || figures[0].Of(text) != text:
				t.Errorf("%q is read as %v in %q", text, figures[0].Values[0], figures[0].Of(text))
			}
			if said := Spoken(text); Spoken(said) != said {
				t.Errorf("%q is said %q and then %q", text, said, Spoken(said))
			}
		}
	}
}
