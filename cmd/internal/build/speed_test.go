package build

import (
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"fixslate/plan/diag"
	"fixslate/samples"
)

// steps is a plan of n steps such as people write: five kinds of steps in turn,
// with tools, fasteners, a test, states, cautions, shots and quotes.
func steps(n int) string {
	var b strings.Builder
	b.WriteString(`[video]
title = "Change the drain pump of a washing machine"
subject = "front-load washing machine"
[[tool]]
id = "driver"
name = "8 mm nut driver"
drives = ["8 mm"]
[[tool]]
id = "meter"
name = "multimeter"
[[fastener]]
id = "screws"
what = "pump screws"
head = "hex"
drive = "8 mm"
count = 3
[[cause]]
id = "pump"
what = "a dead pump"
[[cause]]
id = "wire"
what = "a broken wire"
[[test]]
id = "coil"
question = "Is the coil whole?"
instrument = ["meter"]
setting = "resistance"
expect = "150..250 Ω"
checks = ["pump"]
work = "1m"
`)
	for i := range n {
		fmt.Fprintf(&b, "[[step]]\nid = \"s%d\"\ntitle = \"Part %d of the work\"\n", i, i)
		switch i % 5 {
		case 0:
			b.WriteString("say = \"\"\"\nPull the plug, and keep it where you can see it. Then shut the tap.\n\"\"\"\ndo = \"pull the mains plug and shut the tap\"\ncautions = [\"mains-isolation\"]\nstarts = [\"power-off\"]\n")
		case 1:
			b.WriteString("say = \"\"\"\nUndo the {screws} at the back, and lift the panel off. Mind your fingers under the edge.\n\"\"\"\ndo = \"undo the screws, take the panel off\"\ntools = [\"driver\"]\nfasteners = [\"screws\"]\nstarts = [\"panel off\"]\nwork = \"3m\"\n")
		case 2:
			b.WriteString("say = \"\"\"\nSet the meter to ohms, and touch the probes to the two terminals. {coil} is what a good coil shows. I've seen 187 ohms on two of them.\n\"\"\"\ntools = [\"meter\"]\ntests = [\"coil\"]\nwork = \"2m\"\n")
		case 3:
			b.WriteString("say = \"\"\"\nTip the machine back against the wall, and turn the impeller with a finger.\n\"\"\"\ndo = \"turn the impeller\"\nshot = [{ of = \"impeller\", size = \"close-up\" }]\nneeds = [\"panel off\"]\nwork = \"1m30s\"\n")
		case 4:
			b.WriteString("say = \"\"\"\nPut the panel back, plug in and run a short cycle with nothing in the drum.\n\"\"\"\ndo = \"put the panel back\"\nends = [\"panel off\", \"power-off\"]\nwork = \"5m\"\n")
		}
	}
	return b.String()
}

// BenchmarkSteps is what a check costs for each step: the same in a short plan
// and in a long one.
func BenchmarkSteps(b *testing.B) {
	for _, n := range []int{10, 15, 100, 1_000, 10_000} {
		text := []byte(steps(n))
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				check(text)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/step")
		})
	}
}

// check is one check of a text.
func check(text []byte) []diag.Finding {
	src, faults := diag.NewSource("plan.toml", text)
	return Check(Request{Source: src, Faults: faults})
}

// TestSpeedPlans holds the plans that are timed to being plans: a fault would
// make them fast.
func TestSpeedPlans(t *testing.T) {
	for _, text := range []string{steps(15), cautions(10), sentence(1_000), overlap(10)} {
		src, faults := diag.NewSource("plan.toml", []byte(text))
		if c := Read(Request{Source: src, Faults: faults}); c.Plan == nil {
			t.Error(c.Findings)
		}
	}
}

// TestCheckFindsAll holds Check to finding what Read does, though it makes less:
// where a plan sets a limit to its running time, and where it sets none.
func TestCheckFindsAll(t *testing.T) {
	limit := regexp.MustCompile(`running_max = ".*"`)
	for _, name := range samples.Names() {
		text, _ := samples.Plan(name)
		for _, short := range []string{"", `running_max = "1s"`} {
			src, _ := diag.NewSource("plan.toml", limit.ReplaceAll(text, []byte(short)))
			want, got := Read(Request{Source: src}), Check(Request{Source: src})
			if want.Plan == nil || !reflect.DeepEqual(got, want.Findings) {
				t.Errorf("%s: %d findings, and %d of the whole reading", name, len(got), len(want.Findings))
			}
		}
	}
}

// cautions is a plan of a few steps with n cautions of its own.
func cautions(n int) string {
	var b strings.Builder
	b.WriteString(steps(10))
	for i := range n {
		fmt.Fprintf(&b, "[[caution]]\nid = \"c%d\"\nhazard = \"mains-shock\"\nsay = \"The plug is out, and it stays where I can see it, time %d.\"\n", i, i)
	}
	return b.String()
}

// sentence is a plan with one sentence of n bytes.
func sentence(n int) string {
	words := "then turn the impeller with a finger and look for 3 hairs, "
	return "[video]\ntitle = \"Long\"\nsubject = \"washing machine\"\n[[step]]\ntitle = \"Talk\"\nsay = \"\"\"\n" + strings.Repeat(words, n/len(words)) + "and done.\n\"\"\"\n"
}

// BenchmarkCautions and BenchmarkSentence are plans that nobody writes, to the
// limit of what is read: what they cost grows with their length alone.
func BenchmarkCautions(b *testing.B) {
	for _, n := range []int{100, 1_000, 10_000} {
		text := []byte(cautions(n))
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				check(text)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/caution")
		})
	}
}

func BenchmarkSentence(b *testing.B) {
	for _, n := range []int{1_000, 10_000, 100_000} {
		text := []byte(sentence(n))
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				check(text)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(text)), "ns/byte")
		})
	}
}

// overlap is a plan of n states that all hold at once in its middle.
func overlap(n int) string {
	var b strings.Builder
	b.WriteString("[video]\ntitle = \"Covers\"\nsubject = \"washing machine\"\n")
	for _, key := range []string{"starts", "ends"} {
		for i := range n {
			fmt.Fprintf(&b, "[[step]]\ntitle = \"%s %d\"\nsay = \"Turn the impeller with a finger.\"\n%[1]s = [\"cover %[2]d off\"]\n", key, i)
		}
	}
	return b.String()
}

// BenchmarkOverlap grows with the square of the states, as what holds in each
// step does.
func BenchmarkOverlap(b *testing.B) {
	for _, n := range []int{50, 100, 200, 400} {
		text := []byte(overlap(n))
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				check(text)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n)/float64(n), "ns/state²")
		})
	}
}

// BenchmarkOutputs is what each file of a build takes to make.
func BenchmarkOutputs(b *testing.B) {
	text, _ := samples.Plan("van-blower")
	src, _ := diag.NewSource("plan.toml", text)
	c := Compile(Request{Source: src})
	for _, o := range outputs() {
		b.Run(o.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := c.Make([]string{o.name}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
