package hazard

import (
	"cmp"
	"slices"
	"strings"
	"sync"

	"fixslate/plan/hazard/class"
	"fixslate/plan/hazard/odds"
	"fixslate/plan/prose"
)

// What the relations of the lexicon don't reach, odds learned from labelled
// steps do: each sentence of what the hands do is weighed by its words, the
// lexicon's marks and what the rules found. The thresholds were looked at on the
// labelled steps that are never learned from, but not set to their best there. Of
// an object that nobody names the odds know too little to doubt much, and what can
// kill, or can where it is at its worst, is doubted last. A dryer's back panel and
// reference lines had been doubted away.
//
// Narration tells the work where no do does; beside one its lines show nothing by
// odds alone, but what they show is doubted.
const (
	likely   = 0.35  // odds from which a family is a finding
	unlikely = 0.20  // odds under which a rule's finding is only a mention
	grave    = 0.06  // the same, of a hazard that can kill
	blind    = 0.015 // where the plan names no subject, and of what can kill by narration
)

// weighing is what odds are reckoned with; it is used again for each step. Lists
// hold what is about the step first, then what is of one sentence.
type weighing struct {
	signs    []sign
	places   []int  // of the signs that the network knows, each once: the object's first
	shared   int    // of places: the object's, which layer shares
	met      []bool // by place: it is among places
	odds     []float32
	layer    odds.Layer
	heard    []int     // places of the signs whose words may be shown
	spoken   [][]int   // by text: its own among what may be shown
	says     []float32 // how much each speaks for a family
	verdicts []verdict
	likeness class.Likeness // of the step; nil: not asked for yet
	known    known
}

// known is where the network has the words of what is done, by their form in the
// lexicon, and marks, by the letter of where they stand: as a sign's place, and
// kept from plan to plan.
type known struct {
	net   *odds.Net
	words []int32
	marks ['Z' - 'A' + 1][]int32
}

// word and mark are where a place is kept, 0 for one that is not known yet.
func (o *known) word(form int32) *int32 { return entryOf(&o.words, int(form)) }

func (o *known) mark(kind byte, m uint16) *int32 { return entryOf(&o.marks[kind-'A'], int(m)) }

func entryOf(list *[]int32, n int) *int32 {
	if n >= len(*list) {
		*list = append(*list, make([]int32, n+1-len(*list))...)
	}
	return &(*list)[n]
}

// free leaves no word of a plan behind.
func (w *weighing) free() {
	w.forget(0)
	clear(w.signs[:cap(w.signs)])
	clear(w.verdicts[:cap(w.verdicts)])
}

// verdict is what the odds say of one family in a step.
type verdict struct {
	odds     float32 // of what tells the work
	all      float32 // of every sentence that is weighed
	evidence []Evidence
}

// share makes the signs of the object and sums once what the network makes of
// them.
func (r *reader) share() {
	w := &r.weighing
	if w.known.net != r.net {
		w.known = known{net: r.net}
	}
	if r.subject.sign(r, nearWord, 0); r.net == nil {
		return
	}
	r.look(r.subject.words)
	r.look(r.subject.marks)
	w.shared = len(w.places)
	r.net.Share(&w.layer, w.places)
}

// weigh holds what the rules found against the odds.
func (r *reader) weigh(out *Step, answered []string) {
	w := &r.weighing
	if r.net == nil {
		return
	}
	w.verdicts = append(w.verdicts[:0], make([]verdict, len(r.net.Families()))...)
	w.likeness = nil
	r.shown()
	for k := range r.sources {
		src := &r.sources[k]
		if src.weight == unweighed || src.weight == doubting && !src.shows {
			continue
		}
		tells := src.weight == telling && (src.kind == "do" || r.acted(int32(k)))
		w.signs = r.signsAbout(w.signs[:0], out)
		about := len(w.signs)
		r.sentences(int32(k), r.acts(int32(k)), func(add func([]sign) []sign) {
			w.signs = add(w.signs[:about])
			w.forget(w.shared)
			r.look(w.signs)
			r.judged(out, w.places[w.shared:], tells)
		})
	}
	r.settle(out, answered)
	inOrder(out.Hazards)
	inOrder(out.Mentions)
}

// shown marks the texts whose words show a hazard.
func (r *reader) shown() {
	for i := range r.finding.list {
		for _, at := range r.finding.list[i].says.list[:r.finding.list[i].says.n] {
			r.sources[at.text].shows = true
		}
	}
}

// acted holds for a line of narration that tells of work: one with an act that is
// neither denied nor talk, or that opens like an order.
func (r *reader) acted(k int32) bool {
	for i := range r.past {
		if h := &r.past[i]; h.text == k && h.act && !h.quiet && !h.implied {
			return true
		}
	}
	return prose.Orders(r.sources[k].print) > 0
}

// look finds signs in the network.
func (r *reader) look(signs []sign) {
	w := &r.weighing
	for i := range signs {
		s := &signs[i]
		if s.place == 0 {
			s.place = r.place(s.Sign)
		}
		if at := int(s.place) - 1; at >= 0 && w.add(at) {
			w.places = append(w.places, at)
		}
	}
}

// place is where a sign stands in the network, from 1; below 0 if it does not.
func (r *reader) place(s odds.Sign) int32 {
	at, ok := r.net.Find(s)
	if !ok {
		return -1
	}
	return int32(at) + 1
}

// add notes a place; false for one that is noted already.
func (w *weighing) add(place int) bool {
	if place >= len(w.met) {
		w.met = append(w.met, make([]bool, place+1-len(w.met))...)
	}
	was := w.met[place]
	w.met[place] = true
	return !was
}

// forget leaves the first places.
func (w *weighing) forget(left int) {
	for _, place := range w.places[left:] {
		w.met[place] = false
	}
	w.places = w.places[:left]
}

// judged weighs one sentence by its places and those of what is about the step,
// and keeps for each family the highest odds: all, and of what tells the work.
func (r *reader) judged(out *Step, places []int, tells bool) {
	w := &r.weighing
	w.odds = r.net.Odds(w.odds, &w.layer, places)
	for f, o := range w.odds {
		v := &w.verdicts[f]
		v.all = max(v.all, o)
		if tells && o > v.odds {
			v.odds = o
			if o >= likely && !out.has(r.net.Families()[f]) {
				v.evidence = r.speakers(f)
			}
		}
	}
}

// has says whether a step has a hazard of a family.
func (s *Step) has(family string) bool {
	for i := range s.Hazards {
		if s.Hazards[i].Family == family {
			return true
		}
	}
	return false
}

// speakersMax is how many words are shown for odds.
const speakersMax = 3

// speakers are the words that speak loudest for a family: those of the action
// first, then by place.
func (r *reader) speakers(family int) []Evidence {
	type speaker struct {
		at  spot
		say float32
	}
	var all []speaker
	w := &r.weighing
	w.spoken = slices.Grow(w.spoken[:0], len(r.sources))[:len(r.sources)]
	for i := range w.spoken {
		w.spoken[i] = w.spoken[i][:0]
	}
	w.heard = w.heard[:0]
	for i := range w.signs {
		if s := &w.signs[i]; s.speaks() {
			w.heard = append(w.heard, int(s.place)-1)
		}
	}
	w.says = r.net.Speaks(w.says, &w.layer, w.heard, family)
	says := w.says
	for i := range w.signs {
		s := &w.signs[i]
		if !s.speaks() {
			continue
		}
		its := w.spoken[s.at.text]
		j := slices.IndexFunc(its, func(k int) bool { return all[k].at.start <= s.at.start && s.at.start < all[k].at.end })
		if j < 0 {
			j, its = len(its), append(its, len(all))
			w.spoken[s.at.text], all = its, append(all, speaker{at: s.at})
		}
		all[its[j]].say += says[0]
		says = says[1:]
	}
	slices.SortStableFunc(all, func(a, b speaker) int { return cmp.Compare(b.say, a.say) })
	for i := range all {
		if i == speakersMax || i > 0 && all[i].say < all[0].say/3 {
			all = all[:i]
			break
		}
	}
	slices.SortStableFunc(all, func(a, b speaker) int {
		return cmp.Or(cmp.Compare(b.at.text, a.at.text), cmp.Compare(a.at.start, b.at.start))
	})
	list := make([]Evidence, len(all))
	for i := range all {
		list[i] = r.evidenceAt(all[i].at)
	}
	return list
}

// settle adds what the odds are sure of and turns what they hold unlikely into
// a mention, where nothing but the words of the action showed it.
func (r *reader) settle(out *Step, answered []string) {
	unsure := r.doubt(out)
	changed := len(unsure) > 0
	for f, family := range r.net.Families() {
		if v := &r.weighing.verdicts[f]; v.odds >= likely && !out.has(family) {
			out.Hazards = append(out.Hazards, r.classed(out, family, v, answered))
			changed = true
		}
	}
	if !changed {
		return
	}
	for _, h := range unsure {
		if !slices.ContainsFunc(out.Mentions, func(o Hazard) bool { return o.Class == h.Class }) {
			out.Mentions = append(out.Mentions, h)
		}
	}
	out.Mentions = slices.DeleteFunc(out.Mentions, func(h Hazard) bool {
		return slices.ContainsFunc(out.Hazards, func(o Hazard) bool { return o.Class == h.Class })
	})
}

// inOrder puts hazards into catalogue order, in which most of them stand.
func inOrder(list []Hazard) {
	order := func(a, b *Hazard) int {
		if a.Class == b.Class {
			return cmp.Compare(a.Family, b.Family)
		}
		return cmp.Compare(indexOf(a.Class), indexOf(b.Class))
	}
	for i := range list[:max(0, len(list)-1)] {
		if order(&list[i], &list[i+1]) > 0 {
			slices.SortStableFunc(list, func(a, b Hazard) int { return order(&a, &b) })
			return
		}
	}
}

// classedMax is how many bytes of a text are asked for the class of a hazard.
const classedMax = 1 << 10

// classed is a hazard of a family that no rule showed: of the class that is
// mentioned, or that the step names and is nearest to, or that leads the
// family. A rag beside the petrol that is the evidence names no fire of rags.
func (r *reader) classed(out *Step, family string, v *verdict, answered []string) Hazard {
	id := ""
	for i := range out.Mentions {
		if h := &out.Mentions[i]; h.Family == family {
			id = h.Class
			break
		}
	}
	if id == "" {
		if r.weighing.likeness == nil {
			r.weighing.likeness = class.Likenesses(r.toldWords())
		}
		where := class.OffRoad
		if r.behind.has(r.lex.own.vehicle) {
			where = class.Anywhere
		}
		var words strings.Builder // of the evidence, and what is worked on
		words.WriteString(r.sources[0].print + " ")
		for _, e := range v.evidence {
			words.WriteString(e.Words + " ")
		}
		id = r.weighing.likeness.Within(family, where, words.String()).ID
	}
	h := hazardOf(indexOf(id), family, answered)
	h.Evidence, h.Odds = v.evidence, v.odds
	return h
}

// toldWords are the words of a step and of its object and tools.
func (r *reader) toldWords() string {
	var words strings.Builder
	for k := range r.sources {
		if kind := r.sources[k].kind; words.Len() < classedMax && (r.sources[k].weight == telling || kind == "subject" || kind == "tool") {
			text := r.sources[k].print
			words.WriteString(text[:min(len(text), classedMax)] + " ")
		}
	}
	return words.String()
}

// indexOf is the place of a class in the catalogue.
func indexOf(id string) int { return places()[id] }

var places = sync.OnceValue(func() map[string]int {
	at := map[string]int{}
	for i, c := range catalogue() {
		at[c.ID] = i
	}
	return at
})
