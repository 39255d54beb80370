package marks

import (
	"math"
	"testing"
)

// Source: OpenTimelineIO's test_opentime (frames and labels), but for 107892
// (a manual's "108 per hour" fewer than 108,000) and 2589408 (computed). All
// rows at 30000/1001.
func TestDropFrameTable(t *testing.T) {
	r := rateOf(29.97)
	for _, c := range []struct {
		frame         int64
		drop, nonDrop string
	}{
		{0, "00:00:00;00", "00:00:00:00"},
		{1799, "00:00:59;29", "00:00:59:29"},
		{1800, "00:01:00;02", "00:01:00:00"},
		{8991, "00:04:59;29", ""},
		{8992, "00:05:00;02", ""},
		{10789, "00:05:59;29", "00:05:59:19"},
		{10790, "00:06:00;02", "00:05:59:20"},
		{17981, "00:09:59;29", "00:09:59:11"},
		{17982, "00:10:00;00", "00:09:59:12"},
		{17984, "00:10:00;02", "00:09:59:14"},
		{107892, "01:00:00;00", ""},
		{215784, "02:00:00;00", ""},
		{1078920, "10:00:00;00", ""},
		{1084319, "10:03:00;05", "10:02:23:29"},
		{2589408, "24:00:00;00", ""},
	} {
		if got := r.dropFrame(c.frame); got != c.drop {
			t.Errorf("frame %d is %s, want %s", c.frame, got, c.drop)
		}
		if got := r.nonDrop(c.frame); c.nonDrop != "" && got != c.nonDrop {
			t.Errorf("frame %d is %s without drops, want %s", c.frame, got, c.nonDrop)
		}
	}
	// The same source, at 59.94: four numbers a minute.
	if got, want := rateOf(59.94).dropFrame(1084319), "05:01:30;03"; got != want {
		t.Errorf("at 59.94 frame 1084319 is %s, want %s", got, want)
	}
}

// Reference formula from label to frame, written the other way round:
// 30 (3600h + 60m + s) + f - 2 (T - T div 10), T = 60h + m.
func TestDropFrameReadsBack(t *testing.T) {
	for _, r := range []frameRate{rateOf(29.97), rateOf(59.94)} {
		last := int64(-1)
		for h := range int64(2) {
			for m := range int64(60) {
				for s := range int64(60) {
					for f := range r.Nominal {
						if s == 0 && f < r.drops() && m%10 != 0 {
							continue // numbers that do not exist
						}
						minutes := 60*h + m
						frame := r.Nominal*(60*minutes+s) + f - r.drops()*(minutes-minutes/10)
						if frame != last+1 {
							t.Fatalf("frame %d follows %d", frame, last)
						}
						last = frame
						if got, want := r.dropFrame(frame), r.label(r.Nominal*(60*minutes+s)+f, ";"); got != want {
							t.Fatalf("frame %d is %s, want %s", frame, got, want)
						}
					}
				}
			}
		}
	}
}

func TestRates(t *testing.T) {
	for fps, want := range map[float64]frameRate{
		23.976: {24000, 1001, 24}, 23.98: {24000, 1001, 24}, 24000.0 / 1001: {24000, 1001, 24},
		24: {24, 1, 24}, 25: {25, 1, 25}, 29.97: {30000, 1001, 30}, 30: {30, 1, 30},
		48: {48, 1, 48}, 50: {50, 1, 50}, 59.94: {60000, 1001, 60}, 60: {60, 1, 60}, 12.5: {12500, 1000, 13},
		0: {25, 1, 25}, -1: {25, 1, 25}, 1e9: {25, 1, 25},
	} {
		if got := rateOf(fps); got != want {
			t.Errorf("%v frames a second is %+v, want %+v", fps, got, want)
		}
	}
	if got := rateOf(math.NaN()); got != (frameRate{25, 1, 25}) {
		t.Errorf("no rate is %+v, want 25", got)
	}
	for fps, drops := range map[float64]int64{23.976: 0, 24: 0, 25: 0, 29.97: 2, 30: 0, 50: 0, 59.94: 4, 60: 0, 119.88: 0} {
		if got := rateOf(fps).drops(); got != drops {
			t.Errorf("at %v a minute drops %d numbers, want %d", fps, got, drops)
		}
	}
}

// A frame's own time must give that frame back, ten hours long.
func TestFrameOfATime(t *testing.T) {
	for _, fps := range []float64{23.976, 24, 25, 29.97, 30, 50, 59.94} {
		r := rateOf(fps)
		for n := int64(0); n < 10*3600*r.Nominal; n += 997 {
			if got := r.frame(float64(n) * float64(r.Den) / float64(r.Num)); got != n {
				t.Fatalf("at %v the time of frame %d falls on frame %d", fps, n, got)
			}
		}
	}
}

func TestTimecodeList(t *testing.T) {
	f := film()
	f.FPS = 29.97
	if got, want := string(timecodes(f)), "# drop-frame\tnon-drop\tframe at 29.97 a second\tchapter\n"+
		"00:00:00;00\t00:00:00:00\t0\tMake it safe\n"+
		"00:01:00;02\t00:01:00:00\t1800\tLook & <listen> --> C:\\\n"+
		"01:02:03;00\t01:01:59:08\t111578\tÜberwurf = 24 mm; #2\n"; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	f.FPS = 25
	if got, want := string(timecodes(f)), "# timecode\tframe at 25 a second\tchapter\n"+
		"00:00:00:00\t0\tMake it safe\n"+
		"00:01:00:02\t1502\tLook & <listen> --> C:\\\n"+
		"01:02:03:00\t93075\tÜberwurf = 24 mm; #2\n"; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
