package shotlist

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/timing"
	"fixslate/plan/trade"
)

// deriving finds the shots that one step calls for.
//
// The names are part of the plan language, because drop and replaces take
// them. For step S:
//
//	wide                 where we are; wide-SETUP for each further place
//	to-camera            a step in which nothing is done
//	ID                   a fastener, fuse or wire of the step
//	TEST-display         the meter's display with the probes
//	TEST-look            what eyes, ears, nose or hand find
//	TEST-display-2 …     further readings of a test
//	PART-before          how a part sits before it comes off
//	PART-fitted          how it sits when it is back
//	CAUTION-card         the words of a caution, made in the edit
//	other-side           what differs on the other side
//
// A shot's full id is the step's id, a hyphen and the name, and a number where
// that is taken: a name stands for all shots that have it.
type deriving struct {
	plan  *plan.Plan
	step  int
	seen  map[string]stretch // of parts
	own   []Shot
	shots []Shot
	drops []Shot   // called for, and dropped by the step
	names []string // of all that the step calls for
	told  bool     // a suggested shot is long enough for what is said live
}

// derived are the shots of the steps that are asked about.
func derived(p *plan.Plan, asked func(*plan.Step) bool) []*deriving {
	var all []*deriving
	var seen map[string]stretch
	for i := range p.Steps {
		if !asked(&p.Steps[i]) {
			continue
		}
		if seen == nil {
			seen = partStretches(p)
		}
		d := &deriving{plan: p, step: i, seen: seen, own: ownShots(p, i)}
		d.derive()
		all = append(all, d)
	}
	return all
}

func (d *deriving) derive() {
	s := &d.plan.Steps[d.step]
	d.cautions(s)
	d.sits(s)
	if s.HandsOn() {
		d.places(s)
	} else if len(d.own) == 0 && s.Speaks() {
		d.add("to-camera", Cover{Why: Presenter}, Shot{Size: "medium", Of: "presenter: " + s.Title.Print})
	}
	d.details(s)
	d.tests(s)
	d.fitted(s)
	if !s.OtherSide.Empty() {
		d.add("other-side", Cover{Why: OtherSide}, Shot{Size: "close-up", Of: "other side: " + strings.TrimSuffix(s.OtherSide.Print, ".")})
	}
}

// spokenLive is how long the narration of a step takes, in whole seconds, if it
// is recorded with the picture.
func spokenLive(p *plan.Plan, s *plan.Step) float64 {
	if s.Narrated == plan.Later {
		return 0
	}
	seconds := 0.0
	for _, l := range s.Lines {
		if l.Kind == plan.Spoken {
			seconds += timing.Seconds(l.Speak, timing.DefaultRate().AtWPM(p.Voice.WPM))
		}
	}
	return math.Ceil(seconds)
}

// places gives a wide for each place of the step's shots, one where it names
// none.
func (d *deriving) places(s *plan.Step) {
	subject := s.Title.Print
	if !s.Do.Empty() {
		subject = s.Do.Print
	}
	var seen []string
	for _, shot := range d.own {
		setup := d.plan.Setup(shot.Setup)
		if shot.Kind != Camera || shot.Apart || shot.Bound == Free || len(setup) == 0 || slices.Contains(seen, setup[0].Place.Print) {
			continue
		}
		name, of := "wide", subject
		if len(seen) > 0 {
			name, of = "wide-"+shot.Setup, "seen from here: "+subject
		}
		seen = append(seen, setup[0].Place.Print)
		d.add(name, Cover{Why: Place}, Shot{Size: "wide", Of: of, Setup: shot.Setup})
	}
	if len(seen) == 0 {
		d.add("wide", Cover{Why: Place}, Shot{Size: "wide", Of: subject})
	}
}

// details gives a close-up of each fastener, fuse and wire.
func (d *deriving) details(s *plan.Step) {
	for _, id := range s.Fasteners {
		if f := d.fastener(id, s); f != nil {
			d.add(id, Cover{Detail, plan.Ref{Kind: plan.KindFastener, ID: id}}, Shot{Size: "close-up", Of: fastenerFrame(f)})
		}
	}
	for _, id := range s.Fuses {
		d.add(id, Cover{Detail, plan.Ref{Kind: plan.KindFuse, ID: id}}, Shot{Size: "close-up", Of: d.name(plan.KindFuse, id) + " in its place, rating readable"})
	}
	for _, id := range s.Wires {
		d.add(id, Cover{Detail, plan.Ref{Kind: plan.KindWire, ID: id}}, Shot{Size: "close-up", Of: d.name(plan.KindWire, id) + ", colour and both ends"})
	}
}

// name is what a thing is called in the step's versions.
func (d *deriving) name(kind plan.Kind, id string) string {
	return d.plan.NameFor(plan.Ref{Kind: kind, ID: id}, d.plan.Steps[d.step].Variants)
}

func (d *deriving) fastener(id string, s *plan.Step) *plan.Fastener {
	for _, f := range d.plan.Fastener(id) {
		if plan.Meets(f.Variants, s.Variants) {
			return f
		}
	}
	return nil
}

// fastenerFrame says what must be seen: the fastener with its tool on it.
func fastenerFrame(f *plan.Fastener) string {
	of, on := f.What.Print, "it"
	if f.Count > 1 {
		of, on = fmt.Sprintf("%d × %s", f.Count, of), "one"
	}
	if f.Drive != "" && f.Drive != "?" {
		tool := f.Drive
		if !strings.HasSuffix(tool, "key") { // "5 mm hex key" names the tool already
			tool += " tool"
		}
		of += ", " + tool + " on " + on
	}
	return of
}

// tests gives a close-up of each reading.
func (d *deriving) tests(s *plan.Step) {
	for _, id := range s.Tests {
		for _, t := range d.plan.Test(id) {
			if !plan.Meets(t.Variants, s.Variants) {
				continue
			}
			readings := t.Readings
			if len(readings) == 0 {
				readings = []plan.Reading{{At: t.At, Expect: t.Expect}}
			}
			for i := range readings {
				r := &readings[i]
				name, of := d.frame(narrower(r.Instrument, t.Instrument))
				if i > 0 {
					name = fmt.Sprintf("%s-%d", name, i+1)
				}
				d.add(id+"-"+name, Cover{Reading, plan.Ref{Kind: plan.KindTest, ID: id}},
					Shot{Size: "close-up", Of: describe(of, r), Variants: t.Variants})
			}
		}
	}
}

// frame says what shows a reading: the display of an instrument, or the thing
// itself for a sense.
func (d *deriving) frame(instruments []string) (name, of string) {
	if len(instruments) == 0 {
		return "look", "what is seen"
	}
	switch id := instruments[0]; id {
	case "eyes", "nose":
		return "look", "what is seen"
	case "hand":
		return "look", "what the hand does"
	case "ears":
		return "look", "what is heard: film the thing that sounds"
	default:
		return "display", instrumentFrame(d.name(plan.KindTool, id))
	}
}

// instrumentFrame says what must be readable on an instrument.
func instrumentFrame(name string) string {
	lower := strings.ToLower(name)
	switch {
	case strings.Contains(lower, "multimeter"), strings.Contains(lower, "voltmeter"), strings.Contains(lower, "ohmmeter"), lower == "meter":
		return name + ": display and probe tips"
	case strings.Contains(lower, "tester"), strings.Contains(lower, "lamp"), strings.Contains(lower, "bulb"):
		return name + ": its light and both ends of its leads"
	}
	return name + ": what it shows, readable"
}

func describe(of string, r *plan.Reading) string {
	for _, where := range []string{r.At.Print, r.When.Print} {
		if where != "" {
			of += ", " + where
		}
	}
	switch expect := r.Expect; {
	case expect.Print == "":
	case expect.Measure.Shape == trade.Open:
		of += ": reading " + expect.Print
	case expect.Measure.Shape != trade.Words:
		of += ": reads " + expect.Print
	default:
		of += ": " + expect.Print
	}
	return of
}

// cautions gives a card for each caution that is spoken in the step.
func (d *deriving) cautions(s *plan.Step) {
	for _, use := range s.Cautions {
		c := d.plan.CautionOf(s, use)
		if !use.Spoken || c == nil {
			continue
		}
		d.add(use.ID+"-card", Cover{CautionCard, plan.Ref{Kind: plan.KindCaution, ID: use.ID}},
			Shot{Kind: Insert, Of: "card over the picture", Card: c.Card.Print})
	}
}

// add suggests one shot unless the step drops it, or has a shot of its own that
// replaces it or shows the same: that one is then there for the same reasons.
func (d *deriving) add(name string, cover Cover, shot Shot) {
	s := &d.plan.Steps[d.step]
	d.names = append(d.names, name)
	shot.ID, shot.Covers = s.ID+"-"+name, []Cover{cover}
	is := func(written string) bool { return written == name || written == shot.ID }
	at := slices.IndexFunc(s.Shots, func(w plan.Shot) bool { return slices.ContainsFunc(w.Replaces, is) })
	if at < 0 {
		at = slices.IndexFunc(d.own, func(own Shot) bool { return d.shows(own, shot, cover) })
	}
	if at >= 0 {
		d.own[at].show(cover)
		return
	}
	if slices.ContainsFunc(s.Drop, is) {
		d.drops = append(d.drops, shot)
		return
	}
	shot.Step, shot.Suggested, shot.Takes, shot.Index = d.step, true, 1, -1
	switch {
	case shot.Kind != "":
		shot.Bound = Free
	case cover.Why == Presenter:
		shot.Kind, shot.Who, shot.Bound = Camera, s.People, Free
	case shot.Bound == Before:
		shot.Kind, shot.Who = Camera, s.People
		shot.Without = started(d.plan, d.step)
	default:
		shot.Kind, shot.Who = Camera, s.People
	}
	if shot.Setup == "" && shot.Kind == Camera {
		shot.Setup = d.nearestSetup()
	}
	shot.Seconds = takeSeconds(shot.Size, shot.Kind)
	if (cover.Why == Place || cover.Why == Presenter) && !d.told {
		shot.Seconds, d.told = max(shot.Seconds, spokenLive(d.plan, s)), true
	}
	shot.Variants = narrower(shot.Variants, s.Variants)
	d.shots = append(d.shots, finish(d.plan, shot))
}

// show adds something that a shot shows, once.
func (s *Shot) show(c Cover) {
	if !slices.Contains(s.Covers, c) {
		s.Covers = append(s.Covers, c)
	}
}

// nearestSetup is the set-up of the step's first shot, so that suggested shots
// do not move the camera.
func (d *deriving) nearestSetup() string {
	for _, shot := range d.own {
		if shot.Setup != "" && shot.Kind == Camera && !shot.Apart {
			return shot.Setup
		}
	}
	return ""
}

// shows holds where a shot of the step's own plainly shows the same thing as a
// suggested one: it quotes the fact, or names it, or is of the display.
func (d *deriving) shows(own, shot Shot, cover Cover) bool {
	if own.Kind != Camera && own.Kind != Still {
		return false
	}
	of := strings.ToLower(own.Of)
	switch cover.Why {
	case Place:
		return own.Size == "wide" && (shot.Setup == "" || own.Setup == shot.Setup)
	case Reading:
		return strings.HasSuffix(shot.ID, "-display") && strings.Contains(of, "display") && len(d.plan.Steps[d.step].Tests) == 1
	case Detail:
		return slices.ContainsFunc(own.Covers, func(c Cover) bool { return c.Ref == cover.Ref }) ||
			own.Size != "wide" && strings.Contains(of, strings.ToLower(d.name(cover.Ref.Kind, cover.Ref.ID)))
	}
	return false
}

// Lengths of one take where nothing is written: time enough to cut into and
// out of (common practice, no source).
func takeSeconds(size, kind string) float64 {
	switch {
	case kind == Still || kind == Insert:
		return 5
	case size == "wide" || size == "medium":
		return 20
	}
	return 12
}

// inferSize guesses the size of a shot from what is in it.
func inferSize(of string) string {
	of = strings.ToLower(of)
	for _, word := range []string{"whole", "room", "workshop", "bay", "car", "van", "machine", "bench"} {
		if strings.Contains(of, word) && !strings.Contains(of, " of ") {
			return "wide"
		}
	}
	for _, word := range []string{"presenter", "helper", "hands and", "talk"} {
		if strings.Contains(of, word) {
			return "medium"
		}
	}
	return "close-up"
}
