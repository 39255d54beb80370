package claim

import (
	"math"
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// threaded reads "twelve by one seven five" near a thread: millimetres, the
// pitch said as its digits.
func (r *reader) threaded(f *prose.Figure, at int) {
	const reach, finest, coarsest, thinnest = 5, 100, 600, 8
	if len(f.Values) != 2 || f.Values[1].Unit != "" && f.Values[1].Unit != trade.Millimetre || !r.near(at, reach, r.known.thread) && !r.near(r.wordAt(f.End)-1, 2, r.known.thread) && r.text[f.Start] != 'M' && r.text[f.Start] != 'm' {
		return
	}
	if p := f.Values[1].Number; (f.Spoken || !strings.HasSuffix(f.Of(r.text), "5") && !strings.HasSuffix(f.Of(r.text), "0")) && p >= finest && p <= coarsest && math.Mod(p, 25) == 0 && f.Values[0].Number >= thinnest && f.Values[0].Number < finest {
		f.Values[1].Number = p / 100
	}
	if p := f.Values[1].Number; f.Values[0].Number < 150 && (p < 7 || p > f.Values[0].Number) {
		f.Values[0].Unit, f.Values[1].Unit = trade.Millimetre, trade.Millimetre
	}
}

// sized gives millimetres to the bare sizes of such a part: "a sixty five by
// ninety by ten seal".
func (r *reader) sized(f *prose.Figure, at int) {
	const reach = 4
	if f.Kind != prose.Size || len(f.Values) < 2 || f.Values[0].Unit != "" {
		return
	}
	if f.Spoken && hasParts(f.Of(r.text)) {
		for i := range f.Values {
			f.Values[i].Unit = trade.Inch // "a half by an eighth"
		}
		return
	}
	n := r.wordAt(f.End)
	if r.isTimber(f) {
		for i := range f.Values {
			f.Values[i].Unit = trade.Inch
		}
		return
	}
	metric := r.solid(f)
	for j := max(0, at-reach); j < len(r.words) && j < n+2; j++ {
		metric = metric || r.words[j].marks&round != 0
	}
	if metric {
		for i := range f.Values {
			f.Values[i].Unit = trade.Millimetre
		}
	}
}

// isTimber says whether small sizes are those of timber, which are said in inches:
// "two by four". Common practice, no source.
func (r *reader) isTimber(f *prose.Figure) bool {
	const most = 12
	for _, v := range f.Values {
		if v.Number > most || v.Number != math.Trunc(v.Number) {
			return false
		}
	}
	for i := range r.words {
		switch r.words[i].text {
		case "timber", "rafter", "rafters", "joist", "joists", "lumber", "stud", "studs", "post", "posts", "beam", "plank", "planks", "bearer", "bearers", "purlin":
			return true
		}
	}
	return false
}

// solid says whether bare sizes are millimetres by their length, as sections, sheets,
// doors and boards are told, unless a picture, a tyre, a glass or a grid is spoken of.
func (r *reader) solid(f *prose.Figure) bool {
	const most = 12
	longest := 0.0
	for _, v := range f.Values {
		longest = max(longest, v.Number)
		if v.Number != math.Trunc(v.Number) {
			return false
		}
	}
	if longest <= most {
		return false
	}
	for i := range r.words {
		switch r.words[i].text {
		case "screen", "display", "resolution", "pixel", "pixels", "monitor", "picture", "camera", "tyre", "tyres", "tire", "tires", "tube", "wheel", "wheels",
			"prop", "propeller", "grid", "matrix", "array", "binoculars", "scope", "lens", "magnification", "cassette":
			return false
		}
	}
	return true
}
