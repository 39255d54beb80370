package lint

import (
	"fmt"
	"strings"
	"sync"

	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
)

var cautionMismatch = Rule{Name: "caution-mismatch", Group: Safety, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Cautions {
		c := &p.Plan.Cautions[i]
		own, known := class.Find(c.Class)
		if !known || c.Stock || c.Say.Source == "" {
			continue
		}
		other, ok := speaksOfAnother(c.Say.Print, own)
		if !ok || len(p.lacking(fold(c.Say.Print), c.Class)) >= 2 {
			continue // caution-incomplete asks for words that say more
		}
		report(Report{
			Message: fmt.Sprintf("caution %q counts for %s (%s), and its words are nearer to %s (%s)", c.ID, strings.ToLower(own.Name), own.ID, strings.ToLower(other.Name), other.ID),
			Hint:    fmt.Sprintf("write the hazard that its words are about (fixslate look hazard), or words about %s", strings.ToLower(own.Name)),
			Path:    fmt.Sprintf("caution[%d].hazard", i), Families: []string{own.Family},
		})
	}
}}

// A caution speaks of another hazard where what it shares with its own family is
// less than an apart of what it shares with a class of another one, and this is
// enough to tell. TestMismatchTells measures them on the cautions of the samples
// and of the honest plans in testdata, by which they were set.
const (
	apart   = 0.25
	enough  = 13.0
	several = 3 // words at least: two may meet by chance, but where its own class has none
)

// speaksOfAnother finds the class of another family that the words of a caution
// are about instead.
func speaksOfAnother(say string, own class.Class) (class.Class, bool) {
	shared := class.Likenesses(say, anyWarning...)
	least, mine, most := 2, 0.0, 0.0
	for i, c := range classes() {
		if c.Family == own.Family && shared[i].Words > 0 {
			least = several
			mine = max(mine, shared[i].Weight)
		}
	}
	var best class.Class
	for i, c := range classes() {
		if s := shared[i]; c.Family != own.Family && s.Weight > most && s.Words >= least {
			best, most = c, s.Weight
		}
	}
	return best, most > enough && mine < apart*most
}

// classes are the catalogue's, in its order; nothing writes to them.
var classes = sync.OnceValue(class.All)

// anyWarning are words that say how any warning warns, not what of.
var anyWarning = strings.Fields("away well kill hurt look stay clear both start always")
