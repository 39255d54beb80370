package captions

// What a cue costs, in points. The sum over all cues is what segmentation
// makes least; see segment.go. The order of the weights follows the guides:
// what can't be read in time outweighs every break, a bad break outweighs an
// unbalanced pair of lines, and one sentence a cue is wished for, not forced
// (WAI; BBC Subtitle Guidelines §3.2, §3.10). Their sizes are ours.
const (
	costCue      = 40  // each cue: few and full ones are calmer
	costLine     = 15  // each line after the first: one line where it fits (Netflix)
	costSentence = 45  // a sentence's end inside a cue …
	costInLine   = 20  // … and more where it isn't the end of a line
	costUneven   = 150 // lines of one cue of uneven length, see unevenness
	costEnd      = 2   // a parting between cues against one between lines
	tiny         = 20  // characters below which a cue looks lost …
	costTiny     = 3   // … for each character missing

	hurryMS  = 4  // milliseconds a point, short of the time to read
	wishMS   = 20 // short of the wished time
	pauseMS  = 10 // of a pause inside a cue, over …
	pauseMin = 300
	longMS   = 1 // over the longest time a cue may stay

	unpayable = int64(1) << 50
)

// costs answers what stretches of words cost, each in constant time.
type costs struct {
	list    []word
	profile Profile
	place   []int32 // place[i]: characters before word i, a space after each word
	stops   []int32 // stops[i]: sentences that end before word i
	pauses  []int32 // pauses[i]: points for the pauses after words before i

	// by characters, as far as a cue can have them
	squares  []int64
	readings []int64

	gain int64 // the most that setting words in lines can take off a cue's cost

	rows [64]lineRow // by word; as many as can stand in a cue of most profiles
}

func newCosts(w words, p Profile) costs {
	n := len(w.list)
	most := (p.Width+1)*p.Lines + 1
	c := costs{
		list: w.list, profile: p, place: make([]int32, n+1), stops: make([]int32, n+1), pauses: make([]int32, n+1),
		squares: make([]int64, most), readings: make([]int64, most),
	}
	const words = 16 // a line of more makes its own room
	room := make([]int32, len(c.rows)*words)
	for i := range c.rows {
		c.rows[i].costs = room[i*words : i*words : (i+1)*words]
	}
	for length := range most {
		c.squares[length] = squareOf(length, p.Width)
		c.readings[length] = p.reading(length)
	}
	c.gain = gain(p)
	for i := range w.list {
		a := &w.list[i]
		c.place[i+1] = c.place[i] + a.width + 1
		c.stops[i+1] = c.stops[i]
		if a.stop {
			c.stops[i+1]++
		}
		c.pauses[i+1] = c.pauses[i]
		if i+1 < n {
			if pause := w.list[i+1].start - a.end - pauseMin; pause > 0 {
				c.pauses[i+1] += int32(min(pause/pauseMS, 1<<20))
			}
		}
	}
	return c
}

// characters is the length of words i to j (not included) set in a row.
func (c *costs) characters(i, j int) int { return int(c.place[j]-c.place[i]) - 1 }

// inside counts what a prefix sum holds for the words i to j but the last.
func inside(sum []int32, i, j int) int64 { return int64(sum[j-1] - sum[i]) }

// row is the cost of a line that begins with word i, for every end that it can
// have. Every cue that such a line may stand in asks for it: those of the last
// words are kept.
func (c *costs) row(i int) []int32 {
	kept := &c.rows[i%len(c.rows)]
	if kept.of == i+1 {
		return kept.costs
	}
	kept.of, kept.costs = i+1, kept.costs[:0]
	for j := i + 1; j <= len(c.list) && c.characters(i, j) <= c.profile.Width; j++ {
		kept.costs = append(kept.costs, int32(c.line(i, j)))
		if c.list[j-1].edge != flow {
			break
		}
	}
	return kept.costs
}

// lineRow is what lines cost that begin with one word.
type lineRow struct {
	of    int // the word, from 1; 0: none yet
	costs []int32
}

// line is the cost of a line of words i to j.
func (c *costs) line(i, j int) int64 {
	return c.square(c.characters(i, j)) + costInLine*inside(c.stops, i, j)
}

// square is what a line of that length adds.
func (c *costs) square(length int) int64 {
	if length < len(c.squares) {
		return c.squares[length]
	}
	return squareOf(length, c.profile.Width)
}

func squareOf(length, width int) int64 {
	return costUneven * int64(length) * int64(length) / int64(width*width)
}

// reading is the least time in milliseconds to read so many characters.
func (c *costs) reading(characters int) int64 {
	if characters < len(c.readings) {
		return c.readings[characters]
	}
	return c.profile.reading(characters)
}

// unevenness is what line adds for the lengths of a cue's lines even if they
// are all the same; cue lines takes it off again, which leaves the variance.
func (c *costs) unevenness(total, lines int) int64 {
	return c.square(total) / int64(lines)
}

// parting is the cost of going to a new line after word i.
func (c *costs) parting(i int) int64 { return int64(c.list[i].part) }

// gain is the most by which the cost of setting words in lines can fall below
// nothing. Even lines would cost nothing, but for the space between two lines
// that is counted in their sum and in neither: with n lines of width w at most,
// n·Σa² - (Σa+n-1)² ≥ -(n-1)(2nw+n-1); and each square is rounded down.
func gain(p Profile) int64 {
	most := int64(0)
	for n := int64(1); n <= int64(p.Lines); n++ {
		w := int64(p.Width)
		spaces := costUneven*(n-1)*(2*n*w+n-1)/(n*w*w) + 1
		most = max(most, spaces+n-costLine*(n-1))
	}
	return most
}

// lines is the cost of so many lines for the words i to j, without what each
// line and the partings between them cost.
func (c *costs) lines(i, j, lines int) int64 {
	return costLine*int64(lines-1) - c.unevenness(c.characters(i, j), lines)
}

// cue is the cost of a cue of words i to j, without its lines.
func (c *costs) cue(i, j int) int64 {
	characters := c.characters(i, j)
	cost := int64(costCue)
	if j < len(c.list) {
		cost += costEnd * c.parting(j-1)
	}
	cost += costSentence*inside(c.stops, i, j) + inside(c.pauses, i, j)
	if characters < tiny {
		cost += costTiny * int64(tiny-characters)
	}
	room := c.until(j) - c.list[i].start
	need := c.reading(characters)
	if short := need - room; short > 0 {
		cost += short / hurryMS
	}
	if short := c.profile.comfort(need, j-i) - room; short > 0 {
		cost += short / wishMS
	}
	if over := c.list[j-1].end - c.list[i].start - c.profile.Longest.Milliseconds(); over > 0 {
		cost += over / longMS
	}
	return cost
}

// until is when a cue that ends before word j has to be gone.
func (c *costs) until(j int) int64 {
	end := c.list[j-1].end + c.profile.Linger.Milliseconds()
	if j < len(c.list) {
		end = min(end, c.list[j].start-c.profile.Gap.Milliseconds())
	}
	return end
}

// mayEnd holds where a cue may end before word j.
func (c *costs) mayEnd(j int) bool { return j == len(c.list) || c.list[j-1].part < partNever }

// mayPart holds where a line may end inside a cue, before word k.
func (c *costs) mayPart(k int) bool {
	return k < len(c.list) && c.list[k-1].part < partNever && c.list[k-1].edge != newCue
}
