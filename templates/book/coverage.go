package book

import (
	"fixslate/plan"
	"fixslate/plan/prose"
	"fixslate/shotlist"
)

// covered is one thing that must be seen, and where it is.
type covered struct {
	Kind, What, For string
	Shots           []shotLink
	Said            string
	Missing         string // what is the matter, if no shot shows it
}

type shotLink struct {
	ID     string
	Number int
}

// coverage lists what is missing first.
func coverage(b Book) []covered {
	var missing, rest []covered
	for _, c := range b.Coverage {
		v := covered{Kind: prose.Capital(c.Why.String()), What: c.What, Said: c.Said}
		if c.Ref.Kind == plan.KindVariant {
			v.For = c.Ref.ID
		}
		for _, i := range c.Shots {
			v.Shots = append(v.Shots, shotLink{b.Shots[i].ID, b.Shots[i].Number})
		}
		if c.Missing() {
			v.Missing = shotlist.MissingWords(c)
			missing = append(missing, v)
			continue
		}
		rest = append(rest, v)
	}
	return append(missing, rest...)
}
