package claim

// fittings reads what fits what: "the newer end bolts on to the old motor", "the
// kit from the smaller saw fits too", "the later motor drops straight in".
func (r *reader) fittings() {
	if r.about&joining == 0 || r.found.has(Compatibility) {
		return
	}
	const reach = 8
	k := &r.known.classes
	for i := 1; i < len(r.words); i++ {
		if r.words[i].marks&joining == 0 || r.words[i].mood != statement || r.in(i-1, k.det|k.prep|k.self) || r.is(i-1, "to") || r.is(i-1, "you") {
			continue
		}
		alone := r.words[i].marks&alone != 0
		before, after := 0, 0
		r.clauseBefore(i, reach, func(j int) bool {
			if r.words[j].marks&version != 0 {
				before++
			}
			return true
		})
		end := min(len(r.words), i+reach)
		too := false
		for j := i + 1; j < end && !r.words[j].stopped; j++ {
			if r.words[j].marks&version != 0 {
				after++
			}
			too = too || r.is(j, "too") || r.is(j, "either") || r.is(j, "straight") && (r.is(j+1, "in") || r.is(j+1, "into") || r.is(j+1, "on") || r.is(j+1, "onto")) || r.is(j, "as") && r.is(j+1, "well")
		}
		helped := r.in(i-1, k.modal) || r.is(i-1, "not") || r.is(i-1, "also") || r.is(i-1, "only")
		behind := i+1 < len(r.words) && (r.in(i+1, k.prep|k.particle|k.det) || r.is(i+1, "with") || r.is(i+1, "straight") || r.is(i+1, "right"))
		switch {
		case before > 0 && after > 0 && behind,
			before > 0 && (helped || too) && (alone || behind || too),
			after > 0 && alone && behind && !r.in(i+1, k.det),
			after > 0 && helped && behind,
			alone && too && !r.is(i-1, "it"):
			r.add(Compatibility)
			return
		}
	}
}
