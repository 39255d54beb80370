package shotlist

import "fixslate/plan"

// side is the side of a step's action on which a card stands: a part as it sits
// comes before what takes it off, also in a step that names no state.
type side struct {
	step   int // from 1; 0: on none
	action bool
}

// turn is a place in a row of shots that keep their order.
type turn struct{ row, place int } // row 0: in none

// keepOrder finds the pairs of steps that keep the story's order though their
// states are equal: those that handle the same part or fastener, and a test
// with what is done only after it.
func (b *board) keepOrder() {
	filmed := map[int]bool{}
	for _, c := range b.cards {
		if b.shots[c.shot].Bound == ByStep && !c.again {
			filmed[b.shots[c.shot].Step] = true
		}
	}
	pair := func(before, after int) {
		if before >= 0 && before < after && b.story.block[momentOf(before)] == b.story.block[momentOf(after)] {
			b.after[[2]int{before, after}] = true
		}
	}
	handled := map[plan.Ref]int{}
	tested := map[string]int{}
	for i := range b.plan.Steps {
		if !filmed[i] {
			continue
		}
		s := &b.plan.Steps[i]
		handle := func(kind plan.Kind, ids []string) {
			for _, id := range ids {
				ref := plan.Ref{Kind: kind, ID: id}
				if last, again := handled[ref]; again {
					pair(last, i)
				}
				handled[ref] = i
			}
		}
		handle(plan.KindPart, s.Parts)
		handle(plan.KindFastener, s.Fasteners)
		if at, made := tested[s.OnlyIf.Test]; made && s.OnlyIf.Test != "" {
			pair(at, i)
		}
		for _, id := range s.Tests {
			tested[id] = i
		}
	}
	keeps := map[int]bool{}
	for p := range b.after {
		keeps[p[0]], keeps[p[1]] = true, true
	}
	for i := range b.cards {
		s := &b.shots[b.cards[i].shot]
		if (s.Bound == ByStep || s.Bound == Before) && keeps[s.Step] && !b.cards[i].again {
			b.cards[i].keeps = s.Step
		}
	}
}

// keepTurns puts the shots of each step that changes the object in a row, the
// suggested ones and the plan's own apart: battery off stays before screws out.
// Neighbours with one rig share a place.
func (b *board) keepTurns() {
	type end struct{ place, rig int }
	rows := map[int]end{}
	for i := range b.cards {
		c := &b.cards[i]
		s := &b.shots[c.shot]
		if !c.window.Change || c.again {
			continue
		}
		row := 2*s.Step + 1
		if !s.Suggested {
			row++
		}
		last, begun := rows[row]
		if begun && last.rig != c.rig {
			last.place++
		}
		rows[row] = end{last.place, c.rig}
		c.turn = turn{row, last.place}
	}
}

// keepSides gives the cards of a step their sides, where the step has a shot of
// how a part sits before it comes off.
func (b *board) keepSides() {
	found := map[int]bool{}
	for _, c := range b.cards {
		if s := &b.shots[c.shot]; s.Bound == Before && !c.again {
			found[s.Step] = true
		}
	}
	for i := range b.cards {
		c := &b.cards[i]
		if s := &b.shots[c.shot]; found[s.Step] && !c.again && (s.Bound == Before || s.Bound == ByStep) {
			c.side = side{s.Step + 1, s.Bound == ByStep}
		}
	}
}

// precedes holds where x must come before y.
func (b *board) precedes(x, y *node) bool {
	return x.window.To < y.window.From ||
		x.keeps >= 0 && y.keeps >= 0 && b.after[[2]int{x.keeps, y.keeps}] ||
		x.turn.row > 0 && x.turn.row == y.turn.row && x.turn.place < y.turn.place ||
		x.side.step > 0 && x.side.step == y.side.step && !x.side.action && y.side.action
}
