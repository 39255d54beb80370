package plan

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
)

func (r *reader) wrongType(t target, value any, want string) {
	hint := fmt.Sprintf("write %s = %s", t.key.Name, t.key.Example)
	if s, isText := value.(string); isText && bare(s) {
		hint = fmt.Sprintf("write %s = %s, without quotes", t.key.Name, s)
	}
	if entries, isList := value.([]any); isList && len(entries) > 1 && strings.HasPrefix(want, "text") {
		hint = "write one text; several lines stand between \"\"\" and \"\"\""
	}
	r.fault("type-wrong", t.path(), hint, "%s takes %s, not %s", t.key.Name, want, typeOf(value))
}

// bare holds for a text that without its quotes is a number, or true or false.
func bare(text string) bool {
	_, err := strconv.ParseFloat(text, 64)
	return text == "true" || text == "false" || err == nil && madeOf(text, "0123456789.")
}

func (r *reader) text(t target, value any) string {
	s, ok := value.(string)
	if !ok {
		r.wrongType(t, value, "text in quotes")
	}
	return s
}

// word reads text that may be limited to some words.
func (r *reader) word(t target, value any) string {
	s := r.text(t, value)
	if _, isText := value.(string); isText {
		r.allowed(t, t.path(), s)
	}
	return s
}

func (r *reader) allowed(t target, path, s string) {
	if len(t.key.Words) == 0 || slices.Contains(t.key.Words, s) {
		return
	}
	r.fault("value-wrong", path, "write "+choices(t.key.Words, s), "%s knows no %q", t.key.Name, s)
}

// list reads a list of texts; one text alone is a list of one.
func (r *reader) list(t target, value any) []string {
	return parsedList(r, t, value, func(s string) (string, error) { return s, nil })
}

func parsedList[V any](r *reader, t target, value any, parse func(string) (V, error)) []V {
	entries, isList := value.([]any)
	if !isList {
		s, isText := value.(string)
		if !isText {
			r.wrongType(t, value, "a list of texts like "+t.key.Example)
			return nil
		}
		entries = []any{s}
	}
	var out []V
	for i, entry := range entries {
		path := t.path()
		if isList {
			path = nth(path, i)
		}
		s, ok := entry.(string)
		if !ok {
			r.fault("type-wrong", path, "write a list of texts like "+t.key.Example, "an entry of %s is text in quotes, not %s", t.key.Name, typeOf(entry))
			continue
		}
		if s == "?" {
			continue // still to be found
		}
		v, err := parse(s)
		if err != nil {
			r.fault("value-wrong", path, "", "%s: %v", t.key.Name, err)
			continue
		}
		r.allowed(t, path, s)
		out = append(out, v)
	}
	return out
}

// parsed reads text by its own reader, which may give a value beside an error.
func parsed[V any](r *reader, t target, value any, want string, parse func(string) (V, error)) V {
	var v V
	if s, ok := value.(string); ok {
		v, err := parse(s)
		if err != nil {
			r.fault("value-wrong", t.path(), "", "%s: %v", t.key.Name, err)
		}
		return v
	}
	n, isNumber := numberOf(value)
	if !isNumber {
		r.wrongType(t, value, want)
		return v
	}
	hint := fmt.Sprintf("write it in quotes with its unit: %s = %s", t.key.Name, t.key.Example)
	if strings.HasPrefix(want, "a duration") && n >= 0 {
		hint = fmt.Sprintf("write %s = \"%vm\" for minutes, \"%vs\" for seconds, \"%vh\" for hours", t.key.Name, n, n, n)
	}
	r.fault("value-wrong", t.path(), hint, "%s = %v has no unit", t.key.Name, n)
	return v
}

func numberOf(value any) (float64, bool) {
	switch v := value.(type) {
	case int64:
		return float64(v), true
	case float64:
		return v, true
	}
	return 0, false
}

// Numbers of a plan are counts and limits: never negative, never over a
// million.
const maxNumber = 1e6

func (r *reader) number(t target, value any) float64 {
	n, ok := numberOf(value)
	write := "write " + t.key.Name + " = " + t.key.Example
	switch {
	case !ok:
		r.wrongType(t, value, "a number")
	case math.IsNaN(n) || math.IsInf(n, 0):
		r.fault("value-wrong", t.path(), "", "%s is no number that can be counted with", t.key.Name)
	case n <= 0:
		r.fault("value-wrong", t.path(), write, "%s must be over zero", t.key.Name)
	case n > maxNumber:
		r.fault("value-wrong", t.path(), write, "%s is over a million", t.key.Name)
	default:
		return n
	}
	return 0
}

func (r *reader) whole(t target, value any) int {
	if _, ok := value.(float64); ok {
		r.wrongType(t, value, "a whole number")
		return 0
	}
	return int(r.number(t, value))
}

func (r *reader) clock(t target, value any) Clock {
	if at, ok := value.(time.Time); ok && at.Year() == 0 { // a TOML local time
		return Clock{at.Hour()*60 + at.Minute(), true}
	}
	return parsed(r, t, value, "a time like \"09:30\"", parseClock)
}

func (r *reader) date(t target, value any) Date {
	// BurntSushi/toml puts local dates into the machine's zone; the calendar
	// day in the value's own zone is what stands in the file.
	if at, ok := value.(time.Time); ok && at.Year() > 0 {
		return dateOf(at)
	}
	return parsed(r, t, value, "a date like 2026-11-25", parseDate)
}

func (r *reader) share(t target, value any) Share {
	if n, ok := numberOf(value); ok {
		if !(n > 0 && n <= 1) {
			r.fault("value-wrong", t.path(), `write a probability like 0.3, or "usual", "sometimes", "rare"`, "share = %v is no probability from 0 to 1", n)
			return Share{}
		}
		return Share{Number: n}
	}
	s, isText := value.(string)
	if !isText {
		r.wrongType(t, value, "a word or a number")
	}
	if words := []string{"usual", "sometimes", "rare"}; s != "" && !slices.Contains(words, s) {
		r.fault("value-wrong", t.path(), "write "+choices(words, s)+", or a probability like 0.3", "share knows no %q", s)
		return Share{}
	}
	return Share{Word: s}
}

func (r *reader) chapter(t target, value any) ChapterMark {
	switch v := value.(type) {
	case bool:
		return ChapterMark{Joined: !v}
	case string:
		return ChapterMark{Title: Text{Source: v}}
	}
	r.wrongType(t, value, "false, or a title as text")
	return ChapterMark{}
}
