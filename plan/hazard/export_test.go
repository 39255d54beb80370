package hazard

import "fixslate/plan"

// Traced is the hazards of a plan's first step and the rules that were met, by
// class.
func Traced(p *plan.Plan) (Step, map[string][]string) {
	r := &reader{plan: p, lex: compiled()}
	met := map[string][]string{}
	r.trace = func(rl *rule) {
		f := rl.family
		if f == "" {
			f = catalogue()[rl.class].Family
		}
		met[f] = append(met[f], rl.place)
	}
	r.prepare()
	return r.step(0), met
}

func DiagStats(_ string, each func(func(string, string))) (noact, nothing, nosub, n, unk, tok int) {
	x := compiled()
	busy := x.marks["busy"]
	each(func(ctx, step string) {
		n++
		toks := x.tokens(nil, step)
		for _, t := range toks {
			tok++
			if t.form == 0 && t.grammar == 0 {
				unk++
			}
		}
		a, th := false, false
		var hits []hit
		for from := 0; from < len(toks); {
			to := from + 1
			for to < len(toks) && toks[to].sentence == toks[from].sentence {
				to++
			}
			hits = x.find(hits, toks[from:to], here, 0)
			from = to
		}
		for _, h := range hits {
			if h.act && h.marks.has(busy) {
				a = true
			}
			if !h.act {
				th = true
			}
		}
		if !a {
			noact++
		}
		if !th {
			nothing++
		}
		toks = x.tokens(nil, ctx)
		sub := false
		for _, h := range x.find(nil, toks, over, 0) {
			if !h.act {
				sub = true
			}
		}
		if !sub {
			nosub++
		}
	})
	return
}
