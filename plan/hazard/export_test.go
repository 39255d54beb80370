package hazard

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
