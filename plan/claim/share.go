package claim

import "math"

// Offers that come from elsewhere in the sentence.

// offerShared offers the units of the numbers told before and behind.
func (r *reader) offerShared(c *number, bare feature) {
	const most = 3
	ahead, behind := 0, 0
	for k := len(r.values) - 1; k >= max(0, len(r.values)-4*mostLater) && ahead < most; k-- {
		v := &r.values[k]
		if v.End > c.Start || v.Part != "" || v.Unit == "" || v.Unit == "year" && isYear(v.Number) {
			continue
		}
		if k+1 < len(r.values) && r.values[k+1].Unit == v.Unit && r.values[k+1].End <= c.Start && ahead > 0 {
			continue
		}
		r.offerLike(c, v, shared, uint32(ahead), bare)
		ahead++
	}
	for k := max(0, len(r.values)-4*mostLater); k < len(r.values) && behind < 2; k++ {
		if v := &r.values[k]; v.Start >= c.End && v.Part == "" && v.Unit != "" && !(v.Unit == "year" && isYear(v.Number)) {
			r.offerLike(c, v, coming, uint32(behind), bare)
			behind++
		}
	}
}

// offerLike offers the unit of another number of the sentence.
func (r *reader) offerLike(c *number, v *Value, as form, rank uint32, bare feature) {
	from, to := r.wordAt(v.End), c.at
	vat := r.wordAt(v.Start)
	if as == coming {
		from, to = c.n, vat
	}
	gap := uint32(max(0, min(to-from, 14)))
	ratio := uint32(20)
	if v.Number > 0 && c.v > 0 {
		ratio = uint32(max(-3, min(3, math.Round(math.Log10(c.v/v.Number)*2))) + 10)
	}
	behind := is(joint, 0)
	if to-1 >= from && to-1 < len(r.words) && to > 0 {
		behind = r.wordFeature(joint, to-1)
	}
	same := oneIf(c.at > 0 && vat > 0 && r.words[c.at-1].text == r.words[vat-1].text)
	both := oneIf(r.in(c.at-1, r.known.be) && r.in(vat-1, r.known.be))
	stops := uint32(0)
	for j := from; j <= to && j < len(r.words); j++ {
		if r.words[j].stopped {
			stops++
		}
	}
	mood := oneIf(r.words[min(c.at, len(r.words)-1)].mood == r.words[min(vat, len(r.words)-1)].mood)
	r.offer(v.Unit, as, is(distance, gap|rank<<8).with(bare), is(agree, same|both<<1|mood<<2).with(bare), is(agree, 64|ratio), behind, is(company, 64|min(stops, 3)).with(bare), is(company, 128|oneIf(c.whole)|oneIf(v.Number == math.Trunc(v.Number))<<1))
	for _, scale := range [...]float64{1000, 100} {
		if as == shared && c.whole && c.v < 10 && v.Number >= scale && math.Mod(v.Number, 100) == 0 && v.Number < 10*scale*2 {
			r.offerScaled(v.Unit, scale, as, is(agree, 999), is(agree, 64|ratio).with(is(always, 5)), behind)
			break
		}
	}
}

// offerNear offers what words near say that a number measures.
func (r *reader) offerNear(c *number, bare feature) {
	const reach = 12
	rank, told := uint32(0), oneIf(c.spoken && c.f != nil && hasParts(c.f.Of(r.text)))
	try := func(j int, gap uint32) {
		if rank > 3 {
			return
		}
		for _, d := range r.known.dials[r.known.terms[r.words[j].id].dials] {
			if c.v < d.least || c.v > d.most || c.whole && d.parts {
				continue
			}
			r.offer(d.unit, near, is(dialOf, min(rank, 3)|gap<<4).with(bare), is(dialOf, 1024+oneIf(d.parts)), is(hold, 512|told))
			rank++
			return
		}
	}
	for j := c.at - 1; j >= max(0, c.at-reach); j-- {
		gap := uint32(0)
		switch {
		case c.at-j > 8:
			gap = 2
		case c.at-j > 4:
			gap = 1
		}
		try(j, gap)
	}
	for j := c.n; j < len(r.words) && j < c.n+6; j++ {
		try(j, 3+oneIf(j > c.n+2))
	}
	if unit := r.celsius(); unit != "" {
		r.offer(unit, near, is(dialOf, 2000))
	}
	if r.near(c.at, longestDial, r.known.thermal) || r.near(c.at, longestDial, r.known.heat) || c.v < 0 {
		r.offer("degC", near, is(dialOf, 2001), is(sizeOf, oneIf(c.v < 0)))
	}
}
