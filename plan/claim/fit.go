package claim

// joins are verbs of what goes together; those that also tell how a thing is put
// in its place need a model or a make on either side, or a word such as "won't".
var joins = map[string]bool{"bolt": true, "bolts": true, "mate": true, "mates": true, "pair": true, "pairs": true, "interlock": true, "interlocks": true,
	"interchange": true, "interchanges": true, "swap": true, "swaps": true, "suit": true, "suits": true, "match": true, "matches": true, "mesh": true, "meshes": true,
	"fit": true, "fits": true, "screw": true, "screws": true, "thread": true, "threads": true, "marry": true, "marries": true, "run": false, "runs": false, "work": true, "works": true,
	"drop": false, "drops": false, "go": false, "goes": false, "slot": false, "slots": false, "slide": false, "slides": false, "plug": false, "plugs": false,
	"clip": false, "clips": false, "push": false, "pushes": false, "take": false, "takes": false, "charge": false, "charges": false, "power": false, "powers": false, "drive": false, "drives": false, "accept": true, "accepts": true, "cross": true, "crosses": true, "carry": false, "carries": false}

// versions tell one model or make from another.
const versions = `old older new newer later earlier early late original genuine aftermarket pattern standard generic cheap cheaper other
		bigger smaller larger mark mk series generation model models version versions imperial metric previous pre-facelift
		facelift diesel petrol oem third-party reconditioned remanufactured universal any whichever all both either makes brands`

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
		alone := joins[r.words[i].text]
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
