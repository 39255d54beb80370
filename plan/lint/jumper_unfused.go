package lint

import (
	"fmt"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var jumperUnfused = Rule{Name: "jumper-unfused", Group: Safety, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	for _, d := range p.withClass("unfused-jumper") {
		s := &p.Plan.Steps[d.step]
		if p.signals() || says(p.words[d.step], fusedWords...) || p.fusedLead(s, p.words[d.step]) || p.fusedTool(s) {
			continue
		}
		r := d.report(p)
		r.Message = fmt.Sprintf("step %q bridges or feeds something with a lead that has no fuse", s.Title.Print)
		r.Hint = "use a lead with a fuse no larger than the circuit's, and say so"
		report(r)
	}
}}

// signals holds for things whose contacts carry a signal from a supply that limits
// itself: bridging them for a moment is how they are tried.
func (p *Pass) signals() bool {
	return says(fold(p.Plan.Video.Subject.Print), "pc", "computer", "desktop", "motherboard", "server", "doorbell", "door bell", "thermostat", "intercom", "keyboard", "remote", "telephone", "modem", "router", "model railway")
}

var fusedWords = []string{"fused", "in-line fuse", "inline fuse", "fuse of its own", "with a fuse", "fuse holder", "through a fuse"}

// fusedLead holds where a fuse of the step sits in the lead, or the step is about
// a fuse and names no lead: a fuse that it tests or fits elsewhere guards the
// circuit, and not what bridges it.
func (p *Pass) fusedLead(s *plan.Step, words string) bool {
	if len(s.Fuses) > 0 && !says(words, "bridge", "bridges", "jumper", "paper clip", "paperclip", "link", "bit of wire", "piece of wire", "length of wire", "wire across", "jump wire", "jump lead", "foil") {
		return true
	}
	for _, id := range s.Fuses {
		for _, i := range p.Plan.Find(plan.Ref{Kind: plan.KindFuse, ID: id}) {
			if f := &p.Plan.Fuses[i]; says(fold(f.At.Print+" . "+f.Protects.Print), "lead", "jumper", "in-line", "inline", "holder", "bridge") {
				return true
			}
		}
	}
	return false
}

// fusedTool holds where a tool of the step has a fuse in it.
func (p *Pass) fusedTool(s *plan.Step) bool {
	for _, id := range s.Tools {
		for _, t := range p.Plan.Tool(id) {
			if says(fold(t.Name.Print+" "+t.Why.Print), fusedWords...) {
				return true
			}
		}
	}
	return false
}
