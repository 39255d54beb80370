package book

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/kit"
	"fixslate/shotlist"
)

// shot is one shot beside its tick box.
type shot struct {
	ID, Size, Of string
	Card         string
	Where        string // place, light, sound
	How          string // takes, people, states …
	Why          string
	Suggested    bool
	For          string
}

// shotOf is one shot in words.
func shotOf(p *plan.Plan, s shotlist.Shot) shot {
	v := shot{ID: s.ID, Size: s.Size, Of: keep(s.Of), Card: s.Card, Suggested: s.Suggested, For: attr(s.Variants)}
	var where, how row
	if s.Setup != "" {
		where.add("", p.Name(plan.Ref{Kind: plan.KindSetup, ID: s.Setup}))
	}
	where.add("light: ", s.Light)
	where.add("sound: ", s.Sound)
	v.Where = strings.Join(where, " · ")
	if s.Kind == shotlist.Camera {
		how.add("", takes(s))
	} else {
		how.add("", s.Kind)
	}
	how.add("file ", s.File)
	how.add("with ", strings.Join(s.Who, ", "))
	hold, begin, end := s.Turning(p)
	how.add("while ", words(hold))
	how.add("from here on ", words(begin))
	how.add("until now ", words(end))
	how.add("not while ", words(p.StateWords(s.Without)))
	if s.Apart {
		how.add("", "on another day or at another place")
	}
	if versions := kit.VersionNames(p, s.Variants); versions != "" {
		how.add("", versions+" only")
	}
	v.How = strings.Join(how, " · ")
	var why row
	for _, c := range s.Covers {
		if word := c.Why.String(); c.Why != shotlist.Asked && !slices.Contains(why, word) {
			why.add("", word)
		}
	}
	v.Why = strings.Join(why, ", ")
	return v
}

func takes(s shotlist.Shot) string {
	if s.Takes > 1 {
		return fmt.Sprintf("%d takes of %.0f s", s.Takes, s.Seconds)
	}
	return fmt.Sprintf("%.0f s", s.Seconds)
}

// row is short words, one after the other.
type row []string

func (r *row) add(before, words string) {
	if words != "" {
		*r = append(*r, before+words)
	}
}
