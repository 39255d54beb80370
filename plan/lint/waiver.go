package lint

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
)

// Waivers are applied after all rules have reported. Three rules are about the
// waivers themselves: they report here, and nothing waives them.
var waiverRules = []Rule{
	{Name: "waiver-unexplained", Group: Publish, Severity: diag.Warning},
	{Name: "waiver-expired", Group: Publish, Severity: diag.Warning},
	{Name: "waiver-unused", Group: Publish, Severity: diag.Warning},
}

// waive marks what the plan's waivers cover, adds what is wrong with the
// waivers, and sorts.
func (p *Pass) waive(all []found) []diag.Finding {
	used := make([]bool, len(p.Plan.Waivers))
	weak := make([]bool, len(p.Plan.Waivers)) // meets a grave finding, and lacks what that takes
	unnamed := p.unnamedFamilies(all)         // of dangers that it would set aside with others
	findings := make([]diag.Finding, 0, len(all))
	for _, f := range all {
		for i := range p.Plan.Waivers {
			w := &p.Plan.Waivers[i]
			if !p.covers(w, f) {
				continue
			}
			used[i] = true
			grave := f.group == Safety && f.Severity == diag.Error
			switch {
			case blank(w.Why) || p.expired(w):
			case grave && blank(w.By):
				weak[i] = true
			case grave && slices.Contains(unnamed[i], family(f)):
			default:
				f.Waived, f.Waiver = reason(w), i+1
			}
		}
		findings = append(findings, f.Finding)
	}
	for i := range p.Plan.Waivers {
		findings = append(findings, p.waiverFindings(i, used[i], weak[i])...)
		if len(unnamed[i]) > 0 && !weak[i] && !blank(p.Plan.Waivers[i].Why) && !p.expired(&p.Plan.Waivers[i]) {
			findings = append(findings, p.overreaching(i, unnamed[i]))
		}
	}
	for i := range findings {
		findings[i].Message, findings[i].Hint = bounded(findings[i].Message), bounded(findings[i].Hint)
	}
	diag.Sort(findings)
	return findings
}

// family is the hazard family of a finding on safety, empty for others.
func family(f found) string {
	if len(f.Families) == 0 {
		return ""
	}
	return f.Families[0]
}

// unnamedFamilies are for each waiver the families of dangers that it covers
// and its reason does not name, where it covers those of several: one reason
// given for the mains must not set aside the blade as well.
func (p *Pass) unnamedFamilies(all []found) [][]string {
	unnamed := make([][]string, len(p.Plan.Waivers))
	for i := range p.Plan.Waivers {
		w := &p.Plan.Waivers[i]
		covered := map[string]bool{}
		for _, f := range all {
			if f.group == Safety && f.Severity == diag.Error && family(f) != "" && p.covers(w, f) {
				covered[family(f)] = true
			}
		}
		if len(covered) < 2 {
			continue
		}
		for _, id := range slices.Sorted(maps.Keys(covered)) {
			if !namesFamily(fold(w.Why), id) {
				unnamed[i] = append(unnamed[i], id)
			}
		}
	}
	return unnamed
}

// namesFamily holds where a folded text has a word of a family's name or id.
func namesFamily(folded, id string) bool {
	f, _ := class.FindFamily(id)
	for _, w := range contentWords(f.Name + " " + strings.ReplaceAll(id, "-", " ")) {
		for _, said := range contentWords(folded) {
			if class.Stem(said) == class.Stem(w) {
				return true
			}
		}
	}
	return false
}

// overreaching is the finding on a waiver that covers dangers its reason does
// not name.
func (p *Pass) overreaching(i int, families []string) diag.Finding {
	w := &p.Plan.Waivers[i]
	names := make([]string, len(families))
	for j, id := range families {
		f, _ := class.FindFamily(id)
		names[j] = cmp.Or(f.Name, id)
	}
	path := fmt.Sprintf("waiver[%d].why", i)
	return diag.Finding{Rule: "waiver-unexplained", Severity: diag.Warning, Path: path, At: p.Spans.Value(path),
		Message: fmt.Sprintf("the waiver of %s meets several dangers, and its reason does not name %s", w.Rule, strings.Join(names, ", ")),
		Hint:    "name in why each danger that it sets aside; the others stay"}
}

// longest is how many characters a message may have. The longest of honest plans
// have about 300; a title may be a megabyte.
const longest = 600

// bounded keeps the two ends of a text that is too long: a message has its thing
// in front and its trouble behind.
func bounded(text string) string {
	if len(text) <= longest {
		return text
	}
	runes := []rune(text)
	if len(runes) <= longest {
		return text
	}
	return string(runes[:longest*2/3]) + "…" + string(runes[len(runes)-longest/3+1:])
}

// covers holds where the waiver names the finding's rule, and its thing, its
// step or nothing at all.
func (p *Pass) covers(w *plan.Waiver, f found) bool {
	if w.Rule != f.Rule {
		return false
	}
	switch w.At {
	case "", f.about.ID, f.about.String(), f.Step:
		return true
	}
	if f.Step == "" {
		return false
	}
	return w.At == plan.Ref{Kind: plan.KindStep, ID: f.Step}.String() ||
		slices.ContainsFunc(p.Plan.Step(f.Step), func(s *plan.Step) bool { return strings.EqualFold(s.Title.Print, w.At) })
}

// blank holds for a text that says nothing: no letter and no digit.
func blank(text string) bool {
	return !strings.ContainsFunc(text, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) })
}

func (p *Pass) expired(w *plan.Waiver) bool {
	return w.Until != (plan.Date{}) && p.Today != (plan.Date{}) && w.Until.Compare(p.Today) < 0
}

// reason is what stands beside a waived finding.
func reason(w *plan.Waiver) string {
	why := w.Why
	if w.By != "" {
		why += " (" + w.By + ")"
	}
	return why
}

// waiverFindings are what is wrong with one waiver.
func (p *Pass) waiverFindings(i int, used, weak bool) []diag.Finding {
	w := &p.Plan.Waivers[i]
	path := fmt.Sprintf("waiver[%d]", i)
	var out []diag.Finding
	add := func(rule, key, message, hint string) {
		out = append(out, diag.Finding{Rule: rule, Severity: diag.Warning, Path: path + key,
			At: p.Spans.Value(path + key), Message: message, Hint: hint})
	}
	name := fmt.Sprintf("the waiver of %s", w.Rule)
	if w.At != "" {
		name += fmt.Sprintf(" at %q", w.At)
	}
	switch {
	case blank(w.Why):
		add("waiver-unexplained", "", name+" gives no reason, so it sets nothing aside", `add why = "…"; the risks sheet and the book print it`)
	case weak:
		add("waiver-unexplained", "", name+" sets a danger aside and nobody stands for it", `add by = "…": who decided it`)
	}
	if p.expired(w) {
		add("waiver-expired", ".until", fmt.Sprintf("%s ran out on %s", name, w.Until), "look at the finding again, then set a new date or take the waiver out")
	} else if !used {
		key, hint := p.whyUnused(w)
		add("waiver-unused", key, name+" covers nothing that was found", hint)
	}
	return out
}

// whyUnused is the key of a waiver that no finding can meet, empty where one could,
// and what to write.
func (p *Pass) whyUnused(w *plan.Waiver) (key, hint string) {
	var rules []string
	for _, r := range Rules() {
		rules = append(rules, r.Name)
	}
	if !slices.Contains(rules, w.Rule) {
		if slices.Contains(plan.Faults(), w.Rule) {
			return ".rule", "mend the plan: a fault can't be set aside"
		}
		if near, ok := plan.Nearest(w.Rule, rules); ok {
			return ".rule", fmt.Sprintf("there is no such rule; did you mean %q", near)
		}
		return ".rule", "there is no such rule; fixslate explain lists them"
	}
	if w.At == "" {
		return "", "take it out"
	}
	var ids []string
	for _, f := range p.Plan.Facts() {
		ids = append(ids, f.Ref.ID, f.Ref.String())
		if f.Ref.Kind == plan.KindStep {
			ids = append(ids, p.Plan.Name(f.Ref))
		}
	}
	if slices.ContainsFunc(ids, func(id string) bool { return strings.EqualFold(id, w.At) }) {
		return "", "take it out, or check its rule and at: fixslate explain lists the rules"
	}
	if near, ok := plan.Nearest(w.At, ids); ok {
		return ".at", fmt.Sprintf("there is nothing of that name; did you mean %q", near)
	}
	return ".at", "there is nothing of that name; write kind:id, an id or a step"
}
