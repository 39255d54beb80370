package plan

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// show gives the printed and the spoken form of a quote at a place: the value
// for the versions the place is for, or each value with its version's short
// name. fault says why there is none.
func (f *filler) show(q *Quote, at where) (print, speak, fault string) {
	rows := f.plan.index[q.Ref]
	var prints, speaks []string
	for _, i := range rows {
		variants := f.plan.variantsOf(q.Ref.Kind, i)
		if !Meets(variants, at.variants) {
			continue
		}
		p, s, why := f.showOne(q, i)
		if why != "" {
			return "", "", why
		}
		if len(variants) > 0 && len(at.variants) != 1 {
			short := f.shortNames(variants)
			if before, ok := strings.CutSuffix(p, ")"); ok && q.Ref.Kind == KindPart && q.Key == "" {
				p = before + ", " + short + ")" // one pair of brackets for number and version
			} else {
				p += " (" + short + ")"
			}
			s += ", " + short
		}
		prints, speaks = append(prints, p), append(speaks, s)
	}
	if len(prints) == 0 {
		return "", "", "has no value for the versions of this step"
	}
	return strings.Join(prints, ", "), strings.Join(speaks, ", "), ""
}

// showOne gives one row of a quote.
func (f *filler) showOne(q *Quote, i int) (print, speak, fault string) {
	if q.Key != "" {
		print, ok := f.field(q.Ref.Kind, i, q.Key)
		if !ok {
			return "", "", fmt.Sprintf("asks for a key that a %s does not have", q.Ref.Kind)
		}
		if print == "" {
			return "", "", "is not written in the plan"
		}
		return print, print, ""
	}
	return f.whole(q.Ref, i)
}

// field is the printed form of a key of one row; false where its table has no
// such key.
func (f *filler) field(kind Kind, i int, key string) (string, bool) {
	field := f.plan.rowsOf(kind).fieldAt(i, key)
	if field == nil {
		return "", false
	}
	return f.printed(field, where{fmt.Sprintf("%s[%d].%s", kind, i, key), f.plan.variantsOf(kind, i), 0}), true
}

// whole is a fact's own form, by its kind.
func (f *filler) whole(ref Ref, i int) (print, speak, fault string) {
	p := f.plan
	field := func(key string) string {
		print, _ := f.field(ref.Kind, i, key)
		return print
	}
	switch ref.Kind {
	case KindFastener:
		return f.fastener(&p.Fasteners[i], field("what"))
	case KindPart:
		speak = field("name")
		if print = speak; p.Parts[i].Number != "" {
			print += " (" + Known(p.Parts[i].Number) + ")"
		}
	case KindFuse:
		fuse := &p.Fuses[i]
		print = field("at")
		if print == "" || '0' <= print[0] && print[0] <= '9' {
			print = strings.TrimSpace("fuse " + print)
		}
		if fuse.Rating.Text != "" {
			print += ", " + fuse.Rating.String()
		}
	case KindWire:
		print = strings.TrimSpace(Known(p.Wires[i].Colour) + " wire")
	case KindTerm:
		print = p.Terms[i].Text
	case KindSetup:
		print = joinWords(field("place"), field("view"))
	default:
		if key, ok := speaking[ref.Kind]; ok {
			print = field(key)
		}
	}
	if print == "" {
		return "", "", "has nothing to print"
	}
	return print, cmp.Or(speak, print), ""
}

// speaking are the keys that stand for the whole of a fact.
var speaking = map[Kind]string{
	KindSpec: "value", KindTest: "expect", KindTool: "name", KindSupply: "name", KindVariant: "name", KindCause: "what",
	KindCaution: "say", KindSource: "title", KindClaim: "text", KindStep: "title",
}

// fastener is count, drive and name: "three 8 mm pump bracket screws". Spoken,
// the size stands before a noun and keeps its unit in the singular: "eight
// millimetre".
func (f *filler) fastener(s *Fastener, what string) (print, speak, fault string) {
	count := ""
	switch {
	case s.Count > 0 && s.Count <= 10:
		count = prose.Spoken(strconv.Itoa(s.Count))
	case s.Count > 10:
		count = strconv.Itoa(s.Count)
	}
	drive := s.Drive
	if drive == "?" {
		drive = ""
	}
	drive = strings.Replace(drive, trade.HexKey, "hex-key", 1) // it stands before a noun: "one 5 mm hex-key bolt"
	spoken := drive
	if q, err := trade.ParseQuantity(drive); err == nil {
		number, _, _ := strings.Cut(q.String(), " ")
		spoken = prose.Spoken(number) + " " + q.Unit.Spoken(1)
	}
	return joinWords(count, drive, what), joinWords(count, spoken, what), ""
}

// Known is a plain value as printed: "to be found" for one that is not known.
func Known(value string) string {
	if value == "?" {
		return toBeFound
	}
	return value
}

// printed is the printed form of a field.
func (f *filler) printed(field any, at where) string {
	switch v := field.(type) {
	case *string:
		return Known(*v)
	case *[]string:
		return strings.Join(*v, ", ")
	case *Text:
		f.text(v, at)
		return v.Print
	case *Value:
		f.value(v, at)
		return v.Print
	case *Note:
		f.note(v, at)
		return v.Plain
	case *bool:
		if *v {
			return "yes"
		}
		return "no"
	case *int:
		if *v == 0 {
			return ""
		}
		return strconv.Itoa(*v)
	case *float64:
		return strconv.FormatFloat(*v, 'f', -1, 64)
	case *trade.Measure:
		if v.Text == "" {
			return ""
		}
		return v.String()
	case *Duration:
		return v.String()
	case *Clock:
		return v.String()
	case *Date:
		return v.String()
	case *Exit:
		f.text(&v.Text, at)
		return v.Text.Print
	case *Share:
		return v.Word
	}
	return ""
}

// shortNames are versions in a few words: "two-pin and three-pin".
func (f *filler) shortNames(ids []string) string {
	var names []string
	for _, id := range ids {
		for _, i := range f.plan.index[Ref{KindVariant, id}] {
			v := &f.plan.Variants[i]
			f.text(&v.Short, where{fmt.Sprintf("variant[%d].short", i), nil, 0})
			f.text(&v.Name, where{fmt.Sprintf("variant[%d].name", i), nil, 0})
			names = append(names, cmp.Or(v.Short.Print, v.Name.Print))
		}
	}
	return strings.Join(names, " and ")
}
