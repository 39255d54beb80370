package trade

// habit is a habit of those who trace electrical faults, and what goes wrong
// without it. No standard says it: common practice, no source.
type habit struct {
	At     string // what it is about: "blade fuse"
	Do     string
	Reason string
	Note   string
}

// habits are listed by what they are about. They tell where a reading can be
// trusted, never that a circuit is safe to touch; the maker's wiring diagram and
// procedure come first.
var habits = []habit{
	{"blade fuse", "test both legs, key off", "some fuses are live all the time, others only with the key: one reading does not tell them apart", "through the two holes in its back, against a good earth"},
	{"blade fuse", "test both legs again, key on", "voltage on both legs: the fuse is whole; on one: it is blown or sits badly; on neither: it has no feed now", "a fuse that looks whole may be cracked; a load must be switched on before a bad contact shows"},
	{"earth point", "poor: door jamb, hinge, latch, painted or bolted-on panel", "paint, grease and a hinge stand between it and the body, so a good feed reads low", "a fault may be read that is not there"},
	{"earth point", "good: the maker's jump-start stud or earth stud, bare engine metal, the battery's own negative", "the maker means it to carry current", "prove it first: to the battery's positive it reads the battery's voltage"},
	{"bench lead", "fit a fuse of the lead's own, near the source", "a bare bench lead has none: a slip makes the lead the fuse", "no larger than the wire carries, and no larger than the circuit's fuse; see the tables wire and fuse"},
	{"pair", "test the other one too, and say which side is which", "two parts of a pair have had the same life and often fail together", "fitting one and not the other wants a reason"},
}

func practiceTable() Table {
	t := Table{
		Title: "Habits of fault tracing on low-voltage wiring", Columns: []string{"At", "Practice", "Why", "Note"},
		Notes: []string{
			"Common practice, no source: they tell where a reading can be trusted, never that a circuit is safe to touch.",
			"The maker's wiring diagram and procedure come first; orange cables, airbag circuits and mains are for those trained for them.",
		},
	}
	for _, h := range habits {
		t.Rows = append(t.Rows, Row{Cells: []string{h.At, h.Do, h.Reason, h.Note}, Source: common})
	}
	return t
}
