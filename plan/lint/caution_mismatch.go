package lint

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
)

var cautionMismatch = Rule{Name: "caution-mismatch", Group: Safety, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
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
		found = append(found, Report{
			Message: fmt.Sprintf("caution %q counts for %s (%s), and its words are nearer to %s (%s)", c.ID, strings.ToLower(own.Name), own.ID, strings.ToLower(other.Name), other.ID),
			Hint:    fmt.Sprintf("write the hazard that its words are about (fixslate look hazard), or words about %s", strings.ToLower(own.Name)),
			Path:    fmt.Sprintf("caution[%d].hazard", i), Families: []string{own.Family},
		})
	}
	return found
}}

// A caution speaks of another hazard where the words that it shares with the
// catalogue's own caution weigh less than an apart of those that it shares with
// another family's, and these weigh enough to tell. Both were set on the 181
// cautions of the samples and the honest plans in testdata: it holds for none of
// them, and for 379 of 515 put under another family's class.
const (
	apart   = 0.2
	enough  = 3.0
	several = 3 // words at least: two may meet by chance, but where its own class has none
)

// speaksOfAnother finds the class of another family that the words of a caution
// are about instead.
func speaksOfAnother(say string, own class.Class) (class.Class, bool) {
	all := classes()
	weight, words, seen := make([]float64, len(all)), make([]int, len(all)), map[string]bool{}
	for _, w := range telling(say) {
		if w = stem(w); !seen[w] && !slices.Contains(anyWarning, w) {
			seen[w] = true
			having := catalogueWords.of(w)
			rare := math.Log(float64(len(all)) / float64(len(having)))
			for _, i := range having {
				weight[i] += rare
				words[i]++
			}
		}
	}
	least, mine, most := 2, 0.0, 0.0
	for i := range all {
		if all[i].Family == own.Family && words[i] > 0 {
			least = several
		}
	}
	var best class.Class
	for i := range all {
		switch v := weight[i]; {
		case all[i].ID == own.ID || all[i].Family == own.Family:
			mine = max(mine, v)
		case v > most && words[i] >= least:
			best, most = all[i], v
		}
	}
	return best, most > enough && mine < apart*most
}

// classes are the catalogue's, in its order; nothing writes to them.
var classes = sync.OnceValue(class.All)

// telling are a text's words of three letters and more: "wet", "gas", "eye" tell.
func telling(text string) []string {
	return slices.DeleteFunc(strings.Fields(fold(text)), func(w string) bool {
		return len(w) < 3 || untelling()[w]
	})
}

// untelling are words that stand in texts about anything.
var untelling = sync.OnceValue(func() map[string]bool {
	words := map[string]bool{}
	for _, w := range slices.Concat(emptyWords, littleWords) {
		words[w] = true
	}
	return words
})

var littleWords = []string{"the", "and", "can", "for", "you", "are", "its", "has", "not", "but", "may", "any", "all", "one", "two", "out", "off", "over", "than", "too", "who", "was", "let", "get"}

// anyWarning are stems that say how any warning warns, not what of.
var anyWarning = []string{"keep", "away", "well", "first", "befor", "near", "kill", "hurt", "look", "stay", "clear", "until", "after", "both", "start", "never", "alway"}

// wordTable gives for each stem of the catalogue's cautions the classes that have
// it. catalogueWords stands ready made: to read all cautions of the catalogue
// took longer than every rule of a short plan.
type wordTable struct {
	stems   []string // sorted
	from    []uint16 // where a stem's classes begin; one more at the end
	classes []uint8  // places in the catalogue
}

//go:generate env FIXSLATE_UPDATE=1 go test -tags bare -run TestCatalogueWords .

// of are the classes whose cautions have a stem.
func (t *wordTable) of(stem string) []uint8 {
	i, ok := slices.BinarySearch(t.stems, stem)
	if !ok {
		return nil
	}
	return t.classes[t.from[i]:t.from[i+1]]
}

// stem takes the commonest endings off a word: enough to meet its other forms.
func stem(w string) string {
	for _, ending := range []string{"ing", "ed", "es", "s", "e"} {
		if len(w) > 5 && strings.HasSuffix(w, ending) {
			return strings.TrimSuffix(w, ending)
		}
	}
	return w
}
