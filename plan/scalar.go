package plan

import (
	"cmp"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
)

// Duration is a length of time with its spread: a PERT-style low, likely and
// high. A duration written as one value has all three alike; its spread is
// then for the timing to choose.
type Duration struct {
	Low, Likely, High time.Duration
	Set               bool // written at all
	Open              bool // written as "?"
	Spread            bool // written with a low and a high of its own
}

// Minutes is the likely value in minutes.
func (d Duration) Minutes() float64 { return d.Likely.Minutes() }

// Seconds is the likely value in seconds.
func (d Duration) Seconds() float64 { return d.Likely.Seconds() }

// maxDuration bounds what a plan may hold: longer is a slip of the unit.
const maxDuration = 100 * time.Hour

// ParseDuration reads a duration as a plan writes it: "90s", "4m", "1h30m" or
// "3m..4m..9m" (low, likely, high), at most 100 hours. "?" is an open one. Errors
// say what to write.
func ParseDuration(text string) (Duration, error) {
	text = strings.TrimSpace(text)
	if text == "?" {
		return Duration{Set: true, Open: true}, nil
	}
	parts := strings.Split(text, "..")
	if len(parts) != 1 && len(parts) != 3 {
		return Duration{}, fmt.Errorf("%q gives %d values; write one, or low..likely..high like \"3m..4m..9m\"", text, len(parts))
	}
	var v [3]time.Duration
	for i, part := range parts {
		d, err := parseOneDuration(strings.TrimSpace(part))
		if err != nil {
			return Duration{}, err
		}
		v[i] = d
	}
	if len(parts) == 1 {
		return Duration{Low: v[0], Likely: v[0], High: v[0], Set: true}, nil
	}
	if v[0] > v[1] || v[1] > v[2] {
		return Duration{}, fmt.Errorf("%q does not rise; write low..likely..high", text)
	}
	return Duration{Low: v[0], Likely: v[1], High: v[2], Set: true, Spread: true}, nil
}

func parseOneDuration(text string) (time.Duration, error) {
	var total float64
	rest := text
	for _, unit := range []struct {
		seconds float64
		names   []string
	}{{3600, []string{"h"}}, {60, []string{"min", "m"}}, {1, []string{"s"}}} {
		var n float64
		n, rest = amount(rest, unit.names)
		total += n * unit.seconds
	}
	if rest != "" || text == "" {
		if n, err := strconv.ParseFloat(text, 64); err == nil && !math.IsNaN(n) && !math.IsInf(n, 0) {
			return 0, fmt.Errorf("%q has no unit; write \"%ss\", \"%sm\" or \"%sh\"", text, text, text, text)
		}
		if strings.HasPrefix(text, "-") {
			return 0, fmt.Errorf("%q is negative; a duration is zero or more, like \"90s\"", text)
		}
		return 0, fmt.Errorf("%q is no duration; write it like \"90s\", \"4m\" or \"1h30m\"", text)
	}
	if total > maxDuration.Seconds() {
		return 0, fmt.Errorf("%q is over 100 hours; is the unit right", text)
	}
	return time.Duration(total*1000+0.5) * time.Millisecond, nil
}

// amount reads the number at the head of a text where one of the names stands
// behind it, and what is left of the text; else it is 0 and all of it.
func amount(text string, names []string) (float64, string) {
	const digits, white = "0123456789", " \t\n\f\r"
	rest := strings.TrimLeft(text, digits)
	if fraction, ok := strings.CutPrefix(rest, "."); ok {
		rest = strings.TrimLeft(fraction, digits)
		if len(rest) == len(fraction) {
			return 0, text
		}
	}
	number := text[:len(text)-len(rest)]
	if number == "" || number[0] == '.' {
		return 0, text
	}
	rest = strings.TrimLeft(rest, white)
	for _, name := range names {
		if behind, ok := strings.CutPrefix(rest, name); ok {
			n, _ := strconv.ParseFloat(number, 64) // of digits; too many are over every limit
			return n, strings.TrimLeft(behind, white)
		}
	}
	return 0, text
}

// Clock is a time of day in minutes after midnight.
type Clock struct {
	Minutes int
	Set     bool
}

// String is the clock's usual form, "09:30".
func (c Clock) String() string {
	if !c.Set {
		return ""
	}
	return fmt.Sprintf("%02d:%02d", c.Minutes/60, c.Minutes%60)
}

func parseClock(text string) (Clock, error) {
	h, m, ok := strings.Cut(strings.TrimSpace(text), ":")
	hours, err1 := strconv.ParseUint(h, 10, 8)
	minutes, err2 := strconv.ParseUint(m, 10, 8)
	if !ok || err1 != nil || err2 != nil || len(m) != 2 || hours > 23 || minutes > 59 {
		return Clock{}, fmt.Errorf("%q is no time of day; write it like \"09:30\"", text)
	}
	return Clock{int(hours*60 + minutes), true}, nil
}

// Date is a day of the calendar; the zero Date is none.
type Date struct{ Year, Month, Day int }

// String is the ISO 8601 form, "2026-11-25", empty for no date.
func (d Date) String() string {
	if d == (Date{}) {
		return ""
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day)
}

// Compare orders dates in time.
func (d Date) Compare(other Date) int {
	return cmp.Or(cmp.Compare(d.Year, other.Year), cmp.Compare(d.Month, other.Month), cmp.Compare(d.Day, other.Day))
}

func parseDate(text string) (Date, error) {
	t, err := time.Parse("2006-01-02", strings.TrimSpace(text))
	if err != nil {
		return Date{}, fmt.Errorf("%q is no date; write it like \"2026-11-25\"", text)
	}
	return dateOf(t), nil
}

func dateOf(t time.Time) Date { return Date{t.Year(), int(t.Month()), t.Day()} }

// String is the printed form: "4 min", "1 h 30 min", "3 to 9 min (likely 4)".
func (d Duration) String() string {
	switch {
	case !d.Set:
		return ""
	case d.Open:
		return toBeFound
	case d.Spread:
		return fmt.Sprintf("%s to %s, likely %s", span(d.Low), span(d.High), span(d.Likely))
	}
	return span(d.Likely)
}

func span(d time.Duration) string {
	var parts []string
	if h := d / time.Hour; h > 0 {
		parts = append(parts, fmt.Sprintf("%d h", h))
	}
	if m := d % time.Hour / time.Minute; m > 0 {
		parts = append(parts, fmt.Sprintf("%d min", m))
	}
	if s := (d % time.Minute).Seconds(); s > 0 || len(parts) == 0 {
		parts = append(parts, strconv.FormatFloat(s, 'f', -1, 64)+" s")
	}
	return strings.Join(parts, " ")
}
