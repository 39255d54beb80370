package hazard

import (
	"slices"
	"strconv"
	"strings"
	"sync"

	"fixslate/plan"
	"fixslate/plan/hazard/class"
	"fixslate/plan/hazard/odds"
)

// catalogue is the classes in their order; findings name them by index.
var catalogue = sync.OnceValue(class.All)

// reader reads one plan.
type reader struct {
	plan    *plan.Plan
	now     *plan.Step          // the one being read
	numbers map[string][]string // of parts, by their first words
	lex     *lexicon
	net     *odds.Net   // nil: the rules alone
	object  hit         // the plan's object as one thing
	works   bool        // hands do something in the step
	told    bool        // the step has words for an act, of whatever kind
	acting  bool        // the plan says in some step what hands do
	staged  bool        // the plan's object is no object: a desk, a talk
	behind  set         // marks of what stands about the step and was said in it before
	avoided []avoidance // in the step being read
	powered bool        // power or motion comes on in it
	*room
}

// room is what a reader works in. It is kept from plan to plan: a plan of a few
// steps takes little longer to read than its room to make.
type room struct {
	sources  []source // texts of the step being read; the plan's subject, trade and title first
	subject  naming   // the plan's object, as its subject, trade and title say it
	namings  map[nameKey]*naming
	about    []placed // the step being read
	toks     []token
	done     []token // of the texts that the odds may weigh
	past     []hit   // of the step, before the sentence being read
	scene    scene
	due      []uint16 // rules
	by       []*hit
	cues     []hit
	named    []hit // cues, and what pronouns among them stand for
	finding  finding
	starts   []int32 // of the acts of a sentence, by byte
	weighing weighing
}

var rooms = sync.Pool{New: func() any { return new(room) }}

// free gives a room back without what it knows of a plan. One that grew on a
// giant is let go.
func (o *room) free() {
	const mostKept = 1 << 12
	if max(cap(o.toks), cap(o.cues), cap(o.sources), cap(o.finding.list)) > mostKept {
		return
	}
	clear(o.sources[:cap(o.sources)])
	clear(o.namings)
	o.subject = naming{hits: o.subject.hits}
	clear(o.about[:cap(o.about)])
	clear(o.finding.list[:cap(o.finding.list)])
	o.weighing.free()
	rooms.Put(o)
}

// source is one text of a step.
type source struct {
	kind, path string
	print      string
	text       *plan.Text // for places in the text; nil: the whole value is meant
	start      int        // where text stands in the value at path
	strict     bool       // narration and the like: only what it says outright counts
	mention    bool       // its acts are talk
	weight     weight     // what the odds make of it
	shows      bool       // its words show a hazard
	from, to   int32      // its words among those that the odds may weigh
}

// weight is what the odds of a text may do.
type weight uint8

const (
	unweighed weight = iota
	doubting         // narration beside a do: where it shows a hazard, doubt it
	telling          // it tells what hands do: show hazards too
)

func textSource(kind, path string, t *plan.Text) source {
	return source{kind: kind, path: path, print: t.Print, text: t}
}

func stepPath(i int) string { return "step[" + strconv.Itoa(i) + "]" }

// prepare reads what holds for all steps: the object.
func (r *reader) prepare() {
	r.numbers = partNumbers(r.plan)
	for i := range r.plan.Steps {
		r.acting = r.acting || acts(&r.plan.Steps[i])
	}
	r.sources = append(r.sources[:0], textSource("subject", "video.subject", &r.plan.Video.Subject),
		source{kind: "trade", path: "video.trade", print: r.plan.Video.Trade},
		textSource("title", "video.title", &r.plan.Video.Title))
	hits := r.names(r.subject.hits[:0], over, 0)
	named := len(hits)
	// The trade tells a bicycle's hub from a van's, the title often says more
	// plainly than a model's name what is mended. Neither is what hands are on.
	hits = r.names(hits, over, 1)
	told := len(hits)
	hits = r.names(hits, over, 2)
	hits = append(hits[:told], slices.DeleteFunc(hits[told:], func(h hit) bool {
		return h.state || !h.marks.has(r.lex.own.whole)
	})...)
	r.subject = naming{hits: hits}
	for i := range hits[:named] {
		h := &hits[i]
		if h.marks.has(r.lex.own.talkScene) {
			r.staged = true
		}
		if h.state {
			continue
		}
		if r.object.marks.empty() {
			r.object = *h
			r.object.implied = true
		}
		r.object.marks.join(&h.marks)
	}
	r.share()
}

// names appends the things and states of a source that is no action.
func (r *reader) names(hits []hit, z zone, k int32) []hit {
	r.toks = r.tokens(k)
	from := len(hits)
	hits = r.lex.find(hits, r.toks, z, k)
	// A place says how things stand there, not what hands are on: "on the fork".
	if kind := r.sources[k].kind; kind == "state" || kind == "setup" {
		hits = slices.DeleteFunc(hits, func(h hit) bool { return h.text == k && !h.state })
		for i := from; i < len(hits); i++ {
			hits[i].marks.cut(&r.lex.told)
		}
	}
	r.lex.heads(r.toks, hits[from:])
	r.lex.deny(r.toks, hits[from:])
	for i := from + 1; i < len(hits); i++ {
		// A machine that is off is at rest; one whose cover is off lies open.
		h, on := &hits[i], &hits[i-1]
		if h.marks.has(r.lex.own.offWord) && on.to == h.from && !on.state && on.marks.has(r.lex.own.cover) {
			h.marks = r.lex.implied[r.lex.own.coverOff]
		}
	}
	return hits
}

// naming is a text that stands about the action, as it was read the first time: a
// tool is in use in many steps. Which source of a step it is changes from step to
// step, so whoever takes of it says that anew.
type naming struct {
	hits  []hit
	words []sign // for the odds; nil: not asked for yet
	marks []sign
}

// nameKey is what a naming is known by.
type nameKey struct{ kind, print string }

// placed is a naming and the source of the step that it stands in.
type placed struct {
	*naming
	text int32
}

// naming reads a source that is no action.
func (r *reader) naming(z zone, k int32) *naming {
	id := nameKey{r.sources[k].kind, r.sources[k].print}
	if a, ok := r.namings[id]; ok {
		return a
	}
	a := &naming{hits: r.names(nil, z, k)}
	if r.namings == nil {
		r.namings = map[nameKey]*naming{}
	}
	r.namings[id] = a
	return a
}

// step reads one step.
func (r *reader) step(i int) Step {
	s := &r.plan.Steps[i]
	r.now = s
	out := Step{ID: s.ID, Title: s.Title.Print}
	r.sources = r.sources[:3]
	r.past, r.about = append(r.past[:0], r.subject.hits...), r.about[:0]
	r.works, r.told, r.avoided, r.powered = false, false, nil, false
	r.done = r.done[:0]
	f := &r.finding
	f.list = f.list[:0]
	in := r.plan.In(i)
	holding := statesOf(i, in)
	r.around(s, stepPath(i), holding)
	r.behind = r.object.marks
	for k := range r.past {
		if h := &r.past[k]; !h.act && !h.quiet {
			r.behind.join(&h.marks)
		}
	}
	first := len(r.sources)
	r.actions(i, s)
	for k := first; k < len(r.sources); k++ {
		r.read(f, int32(k))
	}
	// "Four holes, an inch deep": what is done without a word for doing it is
	// done with the tools.
	r.works = r.works || acts(s) && !r.told
	if acts(s) || len(s.Tools) > 0 {
		r.tools(f)
	}
	if acts(s) {
		r.states(f, i, in)
		r.shocks(f, i)
	}
	answering := answeringIn(i, in, holding)
	r.into(&out, f, answering, len(s.Lines) > 0)
	r.weigh(&out, answering)
	return out
}

// acts says whether something is done in a step, and not only said.
func acts(s *plan.Step) bool {
	return !s.Do.Empty() || len(s.Tests) > 0 || len(s.Fasteners) > 0 || s.Work != plan.Duration{}
}

// around gathers what stands about the action: tools, parts, supplies, states,
// places.
func (r *reader) around(s *plan.Step, path string, holding []string) {
	add := func(src source, z zone) {
		k := int32(len(r.sources))
		r.sources = append(r.sources, src)
		a := r.naming(z, k)
		r.about = append(r.about, placed{a, k})
		for i := range a.hits {
			r.past = append(r.past, a.hits[i])
			r.past[len(r.past)-1].text = k
		}
	}
	for _, j := range r.inReach(s) {
		t := &r.plan.Tools[j]
		if slices.Contains(s.Tools, t.ID) && plan.Meets(t.Variants, s.Variants) {
			add(source{kind: "tool", path: path + ".tools", print: t.Name.Print}, gear)
		} else if len(r.plan.Steps) == 1 {
			add(textSource("tool", "tool["+strconv.Itoa(j)+"].name", &t.Name), gear)
		}
	}
	for _, id := range s.Supplies {
		for _, t := range r.plan.Supply(id) {
			if t.Protects == "" {
				add(source{kind: "supply", path: path + ".supplies", print: t.Name.Print}, gear)
			}
		}
	}
	for _, id := range s.Parts {
		for _, t := range r.plan.Part(id) {
			add(source{kind: "part", path: path + ".parts", print: t.Name.Print}, near)
		}
	}
	for _, state := range holding {
		add(source{kind: "state", path: path, print: state}, over)
	}
	for k := range s.Shots {
		for _, setup := range r.plan.Setup(s.Shots[k].Setup) {
			add(source{kind: "setup", path: path + ".shot", print: setup.Place.Print}, near)
		}
	}
}

// inReach are the tools of the plan that may be a step's: in a plan of one step
// all are; in a longer one nobody can say whose a tool is that no step lists.
func (r *reader) inReach(s *plan.Step) []int {
	var all []int
	if len(r.plan.Steps) == 1 {
		for j := range r.plan.Tools {
			all = append(all, j)
		}
		return all
	}
	for _, id := range s.Tools {
		all = append(all, r.plan.Find(plan.Ref{Kind: plan.KindTool, ID: id})...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// actions gathers the texts of the action.
func (r *reader) actions(i int, s *plan.Step) {
	path := stepPath(i)
	add := func(src source) { r.sources = append(r.sources, src) }
	title := textSource("title", path+".title", &s.Title)
	title.mention, title.strict = !acts(s), true
	add(title)
	if !s.Do.Empty() {
		do := textSource("do", path+".do", &s.Do)
		do.weight = telling
		add(do)
	}
	for _, id := range s.Fasteners {
		for _, t := range r.plan.Fastener(id) {
			add(source{kind: "fastener", path: path + ".fasteners", print: "undo the " + t.What.Print, strict: true})
		}
	}
	for _, id := range s.Tests {
		for _, t := range r.plan.Test(id) {
			r.test(t, path+".tests")
		}
	}
	for k := range s.Shots {
		if card := &s.Shots[k].Card; !card.Empty() {
			add(source{kind: "card", path: path + ".shot", print: card.Print, strict: true, mention: true})
		}
	}
	// Where a plan says what hands do, a step that says nothing of them is talk to
	// the camera; in one that is narration alone, the narration tells the work.
	talk := r.acting && !acts(s) && len(s.Tools) == 0 && len(s.Parts) == 0
	say := path + ".say"
	for k := range s.Lines {
		l := &s.Lines[k]
		if l.Kind == plan.Sound {
			continue
		}
		src := source{kind: "say", path: say, print: l.Print, text: &l.Text, start: l.Start, strict: true, mention: talk || announces(l.Print), weight: doubting}
		if s.Do.Empty() && !src.mention && l.Kind == plan.Spoken {
			src.weight = telling
		}
		add(src)
	}
}

// announces holds for a line that tells what the whole film will do.
func announces(line string) bool {
	begins := func(words string) bool { return len(line) >= len(words) && strings.EqualFold(line[:len(words)], words) }
	for _, lead := range [...]string{"so ", "right, ", "okay, ", "and "} {
		if begins(lead) {
			line = line[len(lead):]
		}
	}
	return begins("today") || begins("in this video") || begins("in this film")
}

// test adds what is done in a test: how, and each reading with its instrument.
func (r *reader) test(t *plan.Test, path string) {
	add := func(words string) {
		r.sources = append(r.sources, source{kind: "test", path: path, print: words, strict: true})
	}
	if !t.How.Empty() {
		add(t.How.Print)
	}
	with := ""
	for _, id := range t.Instrument {
		for _, tool := range r.plan.Tool(id) {
			with += " with the " + tool.Name.Print
		}
	}
	if with == "" {
		return
	}
	add("measure " + t.At.Print + with + ", " + t.Setting.Print)
	for i := range t.Readings {
		rd := &t.Readings[i]
		add("measure " + rd.At.Print + with + ", " + rd.When.Print)
	}
}

// states adds the hazards of states in force: an action on a raised car is an
// action with a raised car.
func (r *reader) states(f *finding, step int, in []plan.Interval) {
	for _, v := range in {
		for _, n := range arising()[v.State] {
			h := f.of(n, "", true)
			h.weak = 0
			h.facts = more(h.facts, []Evidence{{Kind: "state", Words: v.State, Path: statePath(step, v)}})
		}
	}
}

// arising is by state the classes of hazard that it brings.
var arising = sync.OnceValue(func() map[string][]int {
	by := map[string][]int{}
	for i, c := range catalogue() {
		for _, state := range c.Arises {
			by[state] = append(by[state], i)
		}
	}
	return by
})

// statePath is the place where a state was begun.
func statePath(step int, v plan.Interval) string {
	if v.From < 0 {
		return "shoot.begins"
	}
	if v.During {
		return stepPath(step) + ".during"
	}
	return stepPath(v.From) + ".starts"
}

// answeringIn are the states of a step that may answer a hazard: those that
// hold, but for what a step that runs something brings to its end. Who plugs a
// machine in and runs it has its power off for the first words only.
func answeringIn(step int, in []plan.Interval, holding []string) []string {
	if !slices.ContainsFunc(in, func(v plan.Interval) bool { return v.State == "running" }) {
		return holding
	}
	return statesOf(step, slices.DeleteFunc(in, func(v plan.Interval) bool { return v.To == step && !v.During }))
}

// statesOf are the states of the stretches that hold in a step, each once, in
// their order. Only what begins in the step can have held before.
func statesOf(step int, in []plan.Interval) []string {
	states := make([]string, 0, len(in))
	for _, v := range in {
		if v.From < step || !slices.Contains(states, v.State) {
			states = append(states, v.State)
		}
	}
	return states
}
