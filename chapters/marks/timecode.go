package marks

import (
	"bytes"
	"fmt"
	"math"
)

// frameRate is a rate in frames a second as a fraction, and the frames its
// timecode counts to a second.
type frameRate struct {
	Num, Den int64
	Nominal  int64
}

// rateOf reads a rate as people write it: 23.976 (or 23.98), 29.97 and 59.94
// are 24000/1001, 30000/1001 and 60000/1001 (SMPTE ST 12-1's list as
// OpenTimelineIO has it). Other rates count as they are written. A rate that is
// none is 25.
func rateOf(fps float64) frameRate {
	if !(fps >= 1 && fps <= 1000) { // NaN fails both
		fps = 25
	}
	nominal := math.Round(fps)
	if exact := nominal * 1000 / 1001; fps != nominal && math.Abs(fps-exact) < 0.006 {
		return frameRate{int64(nominal) * 1000, 1001, int64(nominal)}
	}
	if fps == nominal {
		return frameRate{int64(nominal), 1, int64(nominal)}
	}
	return frameRate{int64(math.Round(fps * 1000)), 1000, int64(math.Ceil(fps))}
}

// FPS is the rate as a number.
func (r frameRate) FPS() float64 { return float64(r.Num) / float64(r.Den) }

// frame is the number of the frame nearest to a time in seconds.
func (r frameRate) frame(seconds float64) int64 {
	return int64(math.Floor(float64(seconds*float64(r.Num))/float64(r.Den) + 0.5))
}

// drops says how many numbers a minute drop-frame timecode leaves out: 2 at
// 29.97, 4 at 59.94, 0 at rates that have no drop-frame timecode.
func (r frameRate) drops() int64 {
	if r.Den != 1001 || r.Nominal%30 != 0 || r.Nominal > 60 {
		return 0
	}
	return r.Nominal / 15
}

// nonDrop is a frame's timecode counted without gaps, hh:mm:ss:ff.
func (r frameRate) nonDrop(frame int64) string { return r.label(frame, ":") }

// dropFrame is a frame's drop-frame timecode, hh:mm:ss;ff, which keeps to the
// clock by leaving out the first numbers of every minute but each tenth; no
// picture is dropped. At rates without one it is nonDrop.
//
// Ten minutes hold 17,982 frames at 29.97. In the first of them none of the
// numbers is missing; each later minute is two numbers short.
func (r frameRate) dropFrame(frame int64) string {
	drops := r.drops()
	if drops == 0 {
		return r.nonDrop(frame)
	}
	minute := r.Nominal*60 - drops
	tens := minute*10 + drops
	d, m := frame/tens, frame%tens
	frame += 9 * drops * d
	if m >= drops {
		frame += drops * ((m - drops) / minute)
	}
	return r.label(frame, ";")
}

func (r frameRate) label(n int64, point string) string {
	s := n / r.Nominal
	return fmt.Sprintf("%02d:%02d:%02d%s%02d", s/3600, s/60%60, s%60, point, n%r.Nominal)
}

// timecodes is a list for an editor: a heading, then a line a chapter with the
// timecode, the number of the frame and the title between tabs. Where the rate
// has drop-frame timecode, both kinds are listed, drop-frame first. The first
// frame is 00:00:00:00.
func timecodes(f Film) []byte {
	var b bytes.Buffer
	rate := rateOf(f.FPS)
	both := rate.drops() > 0
	if both {
		fmt.Fprintf(&b, "# drop-frame\tnon-drop\tframe at %s a second\tchapter\n", number(rate.FPS()))
	} else {
		fmt.Fprintf(&b, "# timecode\tframe at %s a second\tchapter\n", number(rate.FPS()))
	}
	for _, c := range f.Chapters {
		n := rate.frame(c.Start)
		if both {
			fmt.Fprintf(&b, "%s\t", rate.dropFrame(n))
		}
		fmt.Fprintf(&b, "%s\t%d\t%s\n", rate.nonDrop(n), n, c.Title)
	}
	return b.Bytes()
}

// number writes a rate with at most three decimals.
func number(fps float64) string {
	return fmt.Sprint(math.Round(fps*1000) / 1000)
}
