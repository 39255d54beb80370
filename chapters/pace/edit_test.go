package pace

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"fixslate/chapters/align"
	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/given"
	"fixslate/plan/prose"
	"fixslate/plan/timing"
	"fixslate/samples"
)

func sample(t testing.TB) *plan.Plan {
	t.Helper()
	text, ok := samples.Plan("washer-pump")
	if !ok {
		t.Fatal("no sample")
	}
	return given.Plan(t, string(text))
}

// presenter is someone made, whose speech is known.
type presenter struct {
	rate timing.Rate
	cut  map[string]float64 // seconds of silent work after a step's talk
	rand *rand.Rand
}

// speaks makes captions of a plan spoken word for word: a cue a line, as
// automatic captions have it, without commas and full stops. Each line is as
// much quicker or slower than the rate as LineSpread says.
func (who presenter) speaks(p *plan.Plan) []captions.Cue {
	var cues []captions.Cue
	at := 1.0
	for _, s := range timing.Estimate(p, timing.Pace{Rate: who.rate}).Steps {
		for _, b := range s.Beats {
			if !b.Spoken() {
				continue
			}
			whole, rest := timing.Seconds(b.Speak, who.rate), timing.Rest(b.Speak, who.rate)
			noise := math.Exp(timing.LineSpread * who.rand.NormFloat64())
			talk := (whole - rest) * noise
			cues = append(cues, captions.Cue{Start: seconds64(at), End: seconds64(at + talk), Text: bare(b.Speak)})
			at += talk + rest*noise
		}
		at += 3 + who.cut[s.ID]
	}
	return cues
}

func seconds64(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }

// bare is a line as a recogniser writes it.
func bare(text string) string {
	var words []string
	for _, w := range prose.Words(text) {
		words = append(words, strings.ToLower(w.Of(text)))
	}
	return strings.Join(words, " ")
}

func editOf(p *plan.Plan, cues []captions.Cue) Edit {
	return Edit{Plan: p, Match: align.Read(p, timing.Estimate(p, timing.DefaultPace()), cues)}
}

// Through captions and the aligner too, known factors come back with the error
// that theory gives: the same calibration as TestKnownFactorsComeBack, on a
// whole plan that is spoken with a known rate and lined up again.
func TestPaceOfSpokenPlans(t *testing.T) {
	const seeds = 24
	p := sample(t)
	prior, between := speechPrior()
	var errors [factors][]float64
	inside := 0
	for seed := range uint64(seeds) {
		r := rand.New(rand.NewPCG(seed, 77))
		who, video := draw(r, prior), draw(r, between)
		def := timing.DefaultRate()
		rate := timing.Rate{
			CharactersPerSecond: def.CharactersPerSecond / (1 + who[talk] + video[talk]),
			Comma:               def.Comma * max(0.1, 1+who[comma]+video[comma]), Sentence: def.Sentence * max(0.1, 1+who[sentence]+video[sentence]),
		}
		edit := editOf(p, presenter{rate: rate, rand: r}.speaks(p))
		talkRuns, _ := runs(edit.Match)
		mean, cov := learnSpeech([][]run{talkRuns})
		for i := range factors {
			errors[i] = append(errors[i], (mean[i]-1-who[i])/cov.deviation(i))
		}
		l := Learn([]Edit{edit})
		if truth := def.CharactersPerSecond / (1 + who[talk]); l.Speech.Low <= truth && truth <= l.Speech.High {
			inside++
		}
		if l.Pace.Counts.Videos != 1 || l.Pace.Counts.Lines < 80 {
			t.Errorf("seed %d: %d lines in %d videos", seed, l.Pace.Counts.Lines, l.Pace.Counts.Videos)
		}
	}
	for i, name := range []string{"characters", "commas", "sentence ends"} {
		mean, square := 0.0, 0.0
		for _, e := range errors[i] {
			mean += e / seeds
			square += e * e / seeds
		}
		t.Logf("%s: mean error %.2f, mean squared error %.2f of what theory gives", name, mean, square)
		if math.Abs(mean) > 3/math.Sqrt(seeds)+0.2 || square > 1+3*math.Sqrt(2.0/seeds)+0.2 {
			t.Errorf("%s: mean error %.2f deviations, mean square %.2f", name, mean, square)
		}
	}
	if inside < seeds*6/10 {
		t.Errorf("%d of %d rates lie between the 10 and 90 %% points", inside, seeds)
	}
}

// Screen time and work are taken from the steps, and work that was written down
// goes before work that was planned.
func TestScreenAndWork(t *testing.T) {
	p := given.Plan(t, `[video]
title = "Three jobs"
[[step]]
id = "cap"
title = "Cap off"
say = "Unscrew the black cap on the side and put it where it can't roll away."
work = "100s"
[[step]]
id = "brush"
title = "Brush out"
say = "Lift out the spring, then the worn brush that sits behind it in its guide."
work = "100s"
[[step]]
id = "measure"
title = "Measure it"
say = "Lay the old brush against a steel rule and read off how much carbon is left."
`)
	who := presenter{rate: timing.DefaultRate(), rand: rand.New(rand.NewPCG(1, 1)), cut: map[string]float64{"cap": 20, "brush": 45}}
	edit := editOf(p, who.speaks(p))
	edit.Worked = []Work{{"brush", 90}, {"brush", 60}}
	var o observed
	o.steps(edit)
	if len(o.share) != 2 || len(o.work) != 1 || math.Abs(o.work[0]-1.5) > 1e-9 {
		t.Fatalf("shares %v, works %v", o.share, o.work)
	}
	m := edit.Match.Timeline(p)
	if want := []float64{m.Steps[0].Screen / 100, m.Steps[1].Screen / 150}; math.Abs(o.share[0]-want[0]) > 1e-9 || math.Abs(o.share[1]-want[1]) > 1e-9 {
		t.Errorf("shares %v, want %v", o.share, want)
	}
}

// The pace file is read back as it was learned, and captions of another video
// teach nothing.
func TestPaceFile(t *testing.T) {
	p := sample(t)
	r := rand.New(rand.NewPCG(3, 3))
	l := Learn([]Edit{editOf(p, presenter{rate: timing.Rate{CharactersPerSecond: 14, Comma: 0.4, Sentence: 0.8}, rand: r}.speaks(p))})
	back, err := timing.ReadPace(l.Pace.File())
	if err != nil || back != l.Pace {
		t.Errorf("%v, %+v is read back as %+v", err, l.Pace, back)
	}
	if l.Speech.Value > 15.5 || l.Speech.Measured < Enough {
		t.Errorf("a slow presenter gets %.1f characters a second, %.2f of it measured", l.Speech.Value, l.Speech.Measured)
	}
	none := Learn([]Edit{editOf(p, nil)})
	if none.Pace.Counts != (timing.Counts{}) {
		t.Errorf("no captions give %+v", none.Pace.Counts)
	}
}

func TestReadWork(t *testing.T) {
	p := sample(t)
	got, err := ReadWork([]byte("\ufeff# the day\npump-in = \"12m\"\npump-in = 90s # again\n\nprove-it='1h30m'\n"), p)
	if err != nil || len(got) != 3 || got[0] != (Work{"pump-in", 720}) || got[1] != (Work{"pump-in", 90}) || got[2] != (Work{"prove-it", 5400}) {
		t.Errorf("%v, %v", got, err)
	}
	for text, want := range map[string]string{
		"pump-in":         "line 1: \"pump-in\" says no time",
		"\npump = 3m":     "line 2: the plan has no step \"pump\"",
		"pump-in = 12":    "has no unit",
		"pump-in = 0s":    "took no time",
		"pump-in = \"?\"": "took no time",
		"pump-in = -4m":   "negative",
	} {
		if _, err := ReadWork([]byte(text), p); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q gives %v, want %q", text, err, want)
		}
	}
}

func FuzzReadWork(f *testing.F) {
	f.Add([]byte("pump-in = \"12m\"\n# x\nprove-it = 1m..2m..3m"))
	f.Add([]byte("\ufeff=\n=="))
	p := sample(f)
	f.Fuzz(func(t *testing.T, file []byte) {
		works, err := ReadWork(file, p)
		for _, w := range works {
			if err != nil || !(w.Seconds > 0) || math.IsInf(w.Seconds, 0) || len(p.Find(plan.Ref{Kind: plan.KindStep, ID: w.Step})) == 0 {
				t.Errorf("%q gives %+v, %v", file, w, err)
			}
		}
	})
}
