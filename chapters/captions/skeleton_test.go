package captions

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"fixslate/plan"
	"fixslate/plan/given"
	"fixslate/plan/timing"
	"fixslate/samples"
)

func said(line string) plan.Line {
	return plan.Line{Text: plan.Text{Source: line, Print: line}, Speak: line}
}

// pumpPlan has what a skeleton must show and what it must not.
func pumpPlan() *plan.Plan {
	sound := said("pump hums")
	sound.Kind = plan.Sound
	direction := said("hold the plug up to the camera")
	direction.Kind = plan.Direction
	return &plan.Plan{
		Cautions: []plan.Caution{{ID: "mains", Card: plan.Text{Source: "Plug out", Print: "PLUG OUT FIRST"}}},
		Steps: []plan.Step{
			{
				ID: "safe",
				Cautions: []plan.StepCaution{{ID: "mains", Spoken: true, Card: true, Lines: []plan.Line{
					said("Mains can kill: pull the plug and keep it where you can see it."),
				}}},
				Lines: []plan.Line{said("Now turn the taps off."), direction, sound, said("That hum is the pump trying.")},
			},
			{
				ID:        "hinge",
				Lines:     []plan.Line{said("Undo the three 8 mm screws, part number NV-2231 behind them, and keep 10 to 20 Ω in mind for later.")},
				OnScreen:  plan.Duration{Low: time.Minute, Likely: time.Minute, High: time.Minute, Set: true},
				Sides:     []string{"right", "left"},
				OtherSaid: []plan.Line{said("On the left the hose is in the way.")},
			},
		},
	}
}

func TestSkeletonSaysWhatIsHeard(t *testing.T) {
	p := pumpPlan()
	cues := Skeleton(p, timing.Estimate(p, timing.Pace{}))
	var all []string
	for _, c := range cues {
		all = append(all, strings.Fields(c.Text)...)
	}
	want := "Mains can kill: pull the plug and keep it where you can see it. Now turn the taps off. [pump hums] That hum is the pump trying. " +
		"Undo the three 8 mm screws, part number NV-2231 behind them, and keep 10 to 20 Ω in mind for later. On the left the hose is in the way."
	if got := strings.Join(all, " "); got != want {
		t.Errorf("captions say\n%s\nwant\n%s", got, want)
	}
	for _, c := range cues {
		if strings.Contains(c.Text, "see it.") && strings.Contains(c.Text, "Now") {
			t.Errorf("a caution shares the cue %q with the narration", c.Text)
		}
	}
}

func TestSkeletonLabelsSoundsInThePlansStyle(t *testing.T) {
	for style, want := range map[string]string{"": "[pump hums]", "brackets": "[pump hums]", "parentheses": "(pump hums)", "capitals": "PUMP HUMS"} {
		p := pumpPlan()
		p.Captions.Sounds = style
		found := false
		for _, c := range Skeleton(p, timing.Estimate(p, timing.Pace{})) {
			for line := range strings.SplitSeq(c.Text, "\n") {
				found = found || line == want
			}
		}
		if !found {
			t.Errorf("%q: no line says %s", style, want)
		}
	}
}

func TestSkeletonKeepsItsProfile(t *testing.T) {
	for _, profile := range Profiles() {
		p := pumpPlan()
		p.Captions.Profile = profile.Name
		cues := Skeleton(p, timing.Estimate(p, timing.Pace{}))
		for _, f := range Check(File{Cues: cues}, profile) {
			t.Errorf("%s: %s", profile.Name, f.Message)
		}
	}
}

// The words of a cue are near the time the timeline has for them, and nothing
// stands on the screen while the hands work in silence.
func TestSkeletonKeepsTheTimeline(t *testing.T) {
	p := pumpPlan()
	line := timing.Estimate(p, timing.Pace{})
	profile := Profiles()[0]
	cues := Skeleton(p, line)
	first := cues[0].Start.Seconds()
	if first != 0 {
		t.Errorf("the first cue starts at %v s, want 0", first)
	}
	for _, s := range line.Steps {
		for _, b := range s.Beats {
			if b.Kind != timing.Action {
				continue
			}
			for _, c := range cues {
				from, to := b.Start+profile.Linger.Seconds(), b.End-profile.Shift.Seconds()
				if c.End.Seconds() > from && c.Start.Seconds() < to {
					t.Errorf("cue %q is on the screen from %v to %v, in the silence from %v to %v", c.Text, c.Start, c.End, b.Start, b.End)
				}
			}
		}
	}
	last := line.Steps[1].Beats[len(line.Steps[1].Beats)-1]
	if end := cues[len(cues)-1]; end.Start.Seconds() < last.Start-profile.Shift.Seconds() || !strings.Contains(end.Text, "way.") {
		t.Errorf("the last cue is %q at %v, the other side is said at %v", end.Text, end.Start, last.Start)
	}
}

// Steps whose lengths end in .9995 s must neither drift nor overlap.
func TestSkeletonDoesNotDrift(t *testing.T) {
	p := &plan.Plan{}
	long := 9999500 * time.Microsecond
	for i := range 300 {
		p.Steps = append(p.Steps, plan.Step{
			ID: fmt.Sprint("s", i), Lines: []plan.Line{said("Count the screws.")},
			OnScreen: plan.Duration{Low: long, Likely: long, High: long, Set: true},
		})
	}
	cues := Skeleton(p, timing.Estimate(p, timing.Pace{}))
	if len(cues) != 300 {
		t.Fatalf("%d cues, want 300", len(cues))
	}
	for i, c := range cues {
		want := time.Duration(float64(i)*9.9995*1000+0.5) * time.Millisecond
		if d := c.Start - want; d > time.Millisecond || d < -time.Millisecond {
			t.Fatalf("cue %d starts at %v, want %v", i, c.Start, want)
		}
		if i > 0 && c.Start < cues[i-1].End {
			t.Fatalf("cue %d starts at %v before the one before it ends at %v", i, c.Start, cues[i-1].End)
		}
	}
}

func TestSkeletonOfNothing(t *testing.T) {
	if cues := Skeleton(&plan.Plan{}, timing.Timeline{}); len(cues) != 0 {
		t.Errorf("an empty plan has captions: %v", cues)
	}
}

// No cue of any sample may break any profile.
func TestSkeletonsOfTheSamples(t *testing.T) {
	for _, name := range samples.Names() {
		file, _ := samples.Plan(name)
		p := given.Plan(t, file)
		line := timing.Estimate(p, timing.Pace{})
		for _, profile := range Profiles() {
			p.Captions.Profile = profile.Name
			cues := Skeleton(p, line)
			if len(cues) == 0 {
				t.Errorf("%s has no captions", name)
			}
			for _, f := range Check(File{Cues: cues}, profile) {
				t.Errorf("%s, %s: %s", name, profile.Name, f.Message)
			}
		}
	}
}
