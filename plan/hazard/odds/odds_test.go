package odds

import (
	"slices"
	"strings"
	"testing"
)

// lessons name fire where a word and a mark come together, and dust where a
// third word stands wherever it stands.
func lessons() []Example {
	hot, oil, dust := Sign{Kind: 'd', Word: "hot"}, Sign{Kind: 'C', Number: 700}, Sign{Kind: 'o', Word: "dust"}
	var all []Example
	for i := range 400 {
		e := Example{Signs: []Sign{{Kind: 'd', Word: string(rune('a' + i%7))}}}
		if i%2 == 0 {
			e.Signs = append(e.Signs, hot)
		}
		if i%3 == 0 {
			e.Signs = append(e.Signs, oil)
		}
		if i%2 == 0 && i%3 == 0 {
			e.Named = append(e.Named, "fire")
		}
		if i%5 == 0 {
			e.Signs = append(e.Signs, dust)
			e.Named = append(e.Named, "dust")
		}
		all = append(all, e)
	}
	return all
}

func learnt(t *testing.T) *Net {
	t.Helper()
	n, err := Open(string(Learn(lessons(), []string{"fire", "dust"}, "toy", Schooling{Rounds: 60})))
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func (n *Net) of(signs ...Sign) []float32 {
	var places []int
	for _, s := range signs {
		if p, ok := n.Find(s); ok {
			places = append(places, p)
		}
	}
	return n.Odds(nil, &Layer{}, places)
}

// Two signs together mean what neither means alone: no sum of weights can say
// that without a layer between.
func TestLearnsWhatComesTogether(t *testing.T) {
	n := learnt(t)
	hot, oil := Sign{Kind: 'd', Word: "hot"}, Sign{Kind: 'C', Number: 700}
	if both := n.of(hot, oil); both[0] < 0.8 {
		t.Errorf("both signs give %.2f", both[0])
	}
	for _, one := range [...]Sign{hot, oil} {
		if odds := n.of(one); odds[0] > 0.3 {
			t.Errorf("%v alone gives %.2f", one, odds[0])
		}
	}
}

// A word learned in one place counts in another, where it was never met.
func TestKnowsASignAnywhere(t *testing.T) {
	n := learnt(t)
	if odds := n.of(Sign{Kind: 't', Word: "dust"}); odds[1] < 0.5 {
		t.Errorf("a known word in a new place gives %.2f", odds[1])
	}
	if _, ok := n.Find(Sign{Kind: 'd', Word: "never"}); ok {
		t.Error("a word is found that was never met")
	}
}

// What speaks for a family is what its lessons have, and not the words beside.
func TestSpeaks(t *testing.T) {
	n := learnt(t)
	dust, _ := n.Find(Sign{Kind: 'o', Word: "dust"})
	beside, _ := n.Find(Sign{Kind: 'd', Word: "b"})
	var layer Layer
	n.Odds(nil, &layer, []int{dust, beside})
	if say := n.Speaks(nil, &layer, []int{dust, beside}, 1); say[0] <= say[1] {
		t.Errorf("dust and the word beside speak %.2f", say)
	}
}

// The same lessons give the same bytes.
func TestLearnsTheSame(t *testing.T) {
	a := Learn(lessons(), []string{"fire", "dust"}, "toy", Schooling{Rounds: 3})
	b := Learn(lessons(), []string{"fire", "dust"}, "toy", Schooling{Rounds: 3})
	if !slices.Equal(a, b) {
		t.Error("two networks differ")
	}
}

func TestOpenRefusesWhatIsCut(t *testing.T) {
	for _, cut := range [...]int{0, 5, len(magic), len(magic) + 9, 100, len(learned) / 2, len(learned) - 1} {
		if _, err := Open(learned[:cut]); err == nil {
			t.Errorf("%d bytes are taken for a network", cut)
		}
	}
	if _, err := Open(learned + " "); err == nil {
		t.Error("more than a network is taken for one")
	}
	if n := Learned(); n.signs < 1000 || len(n.Families()) < 30 || !strings.Contains(n.Stamp(), "steps") {
		t.Errorf("the program's network has %d signs, %d families, stamp %q", n.signs, len(n.Families()), n.Stamp())
	}
}

// More signs than a sum has room for are cut off, not summed wrongly.
func TestManySigns(t *testing.T) {
	n := learnt(t)
	dust, _ := n.Find(Sign{Kind: 'o', Word: "dust"})
	many := slices.Repeat([]int{dust}, 3*signsMax)
	if a, b := n.Odds(nil, &Layer{}, many), n.Odds(nil, &Layer{}, many[:signsMax]); !slices.Equal(a, b) {
		t.Errorf("%v, want %v", a, b)
	}
}
