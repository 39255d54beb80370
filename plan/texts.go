package plan

import "fmt"

// Words is one text of the plan and where it stands.
type Words struct {
	Path   string // of its key: "step[2].say"
	Offset int    // where the text begins in the decoded value at Path, in bytes
	Step   int    // index of the step it belongs to, -1 for none
	Text
}

// Span is the stretch of the decoded value at Path that a stretch of the
// printed text came from; 0, 0 is the whole text.
func (w Words) Span(start, end int) [2]int {
	if start == 0 && end == 0 {
		end = len(w.Print)
	}
	from, to := w.SourceSpan(start, end)
	return [2]int{w.Offset + from, w.Offset + to}
}

// Texts are all texts of the plan that were written, with their quotes filled,
// in the order of the language. Narration comes line by line.
func (p *Plan) Texts() []Words {
	var all []Words
	add := func(t target, text Text, offset int) {
		if text.Source != "" {
			all = append(all, Words{t.path(), offset, t.at.step, text})
		}
	}
	planTable.visit(&element{step: -1}, p, func(t target) {
		switch field := t.field.(type) {
		case *Text:
			add(t, *field, 0)
		case *Value:
			add(t, field.Text, 0)
		case *Exit:
			add(t, field.Text, 0)
		case *ChapterMark:
			add(t, field.Title, 0)
		case narration:
			for _, l := range field.step.Lines {
				add(t, l.Text, l.Start)
			}
		case *[]StepCaution:
			for i, use := range *field {
				if use.Say.Source != "" {
					all = append(all, Words{fmt.Sprintf("%s[%d].say", t.path(), i), 0, t.at.step, use.Say})
				}
			}
		}
	})
	return all
}
