package build

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fixslate/chapters"
	"fixslate/plan"
)

// reviewMax bounds what is read of a review.json; one of 300 steps and ten
// hours has some 2 MB.
const reviewMax = 32 << 20

// Stale is what an earlier match in a folder no longer says of the plan.
type Stale struct {
	Chapters []string // real chapters whose steps were changed, with their time and why
	New      []string // titles of steps that the match does not know
}

// Any holds where something is stale.
func (s Stale) Any() bool { return len(s.Chapters)+len(s.New) > 0 }

// StaleIn compares a plan with the review.json that a match left in a folder.
// matched is false where there is none, or none that can be read: then nothing
// is known, and that is no error.
func StaleIn(dir string, p *plan.Plan, planSum string) (s Stale, matched bool, err error) {
	raw, err := readReview(filepath.Join(dir, "review.json"))
	if errors.Is(err, fs.ErrNotExist) {
		return s, false, nil
	}
	if err != nil {
		return s, false, fmt.Errorf("%s: the review of an earlier match can't be read: %w", dir, cause(err))
	}
	var was matchJSON
	if json.Unmarshal(raw, &was) != nil || was.PlanSum == "" {
		return s, false, nil
	}
	if was.PlanSum == planSum {
		return s, true, nil
	}
	return staleness(was, p), true, nil
}

func readReview(name string) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, reviewMax))
}

// staleness says which chapters hold steps that were changed or taken out, and
// which steps are new. A plan changed elsewhere (a source, a note) leaves all
// chapters good.
func staleness(was matchJSON, p *plan.Plan) Stale {
	var s Stale
	known, changed := map[string]bool{}, map[string]string{}
	for _, old := range was.Steps {
		known[old.ID] = true
		at := p.Find(plan.Ref{Kind: plan.KindStep, ID: old.ID})
		switch {
		case len(at) == 0:
			changed[old.ID] = fmt.Sprintf("step %q was taken out", old.Title)
		case stepSum(&p.Steps[at[0]]) != old.Sum:
			changed[old.ID] = fmt.Sprintf("step %q was changed", old.Title)
		}
	}
	for _, c := range was.Chapters {
		var why []string
		for _, id := range c.Steps {
			if w, is := changed[id]; is {
				why = append(why, w)
			}
		}
		if len(why) > 0 {
			s.Chapters = append(s.Chapters, fmt.Sprintf("%s %s (%s)", chapters.Stamp(c.Start), c.Title, strings.Join(why, ", ")))
		}
	}
	for i := range p.Steps {
		if !known[p.Steps[i].ID] && !slices.Contains(s.New, p.Steps[i].Title.Print) {
			s.New = append(s.New, p.Steps[i].Title.Print)
		}
	}
	return s
}
