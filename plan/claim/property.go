package claim

// properties reads what a thing is said to be: "the brown wire is live", "the
// outer ring is nylon", "these are left-handed".
func (r *reader) properties() {
	const reach = 3
	k := &r.known.classes
	for i := range r.words {
		w := &r.words[i]
		if w.classes&k.be == 0 || w.mood != statement || w.text == "been" || w.text == "being" {
			continue
		}
		if i == 0 || r.in(i-1, k.self) || r.is(i-1, "there") {
			continue
		}
		if r.coloured(i) {
			r.add(Spec)
			return
		}
		for j := i + 1; j < len(r.words) && j <= i+reach && !r.words[j].stopped; j++ {
			if r.in(j, k.property) {
				if r.in(j-1, k.det) && !r.is(j-1, "a") && !r.is(j-1, "an") && !r.is(j-1, "the") && !r.is(j-1, "all") && !r.is(j-1, "both") || r.is(j-1, "the") && !r.in(j+1, k.conductor) && j+1 < len(r.words) {
					break // "is my brass hammer"
				}
				r.add(Spec)
				return
			}
		}
	}
}

// coloured reads which wire is which: "the white one's the signal wire", "the
// live is brown".
func (r *reader) coloured(i int) bool {
	const reach = 3
	k := &r.known.classes
	colour, role := false, false
	r.clauseBefore(i, reach, func(j int) bool {
		colour = colour || r.in(j, k.colour|k.conductor)
		role = role || r.in(j, k.role)
		return true
	})
	for j := i + 1; j < len(r.words) && j <= i+reach && !r.words[j].stopped; j++ {
		if colour && r.in(j, k.role) || role && r.in(j, k.colour) {
			return true
		}
	}
	return false
}
