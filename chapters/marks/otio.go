package marks

import (
	"encoding/json"
	"fmt"
	"strconv"

	"fixslate/chapters"
)

// otio is an OpenTimelineIO timeline: one video track with a clip for each
// step, its media still missing, and a marker for each chapter on the stack,
// where marked ranges count from the start of the timeline.
//
// Schema versions are those of releases 0.15 to 0.18: Clip.2 and Marker.2.
// 0.18 refuses the newer Marker.3, newer readers take Marker.2. Markers have no
// length: a chapter is a place. Clips are cut at whole frames from the
// unrounded times, so rounding never adds up; a clip shorter than a frame is
// left out.
func otio(f Film) []byte {
	rate := rateOf(f.FPS)
	markers := []any{}
	for _, c := range f.Chapters {
		markers = append(markers, marker{
			named("Marker.2", c.Title), "GREEN", comment(c), rate.span(rate.frame(c.Start), 0),
		})
	}
	children := []any{}
	at := int64(0)
	for _, c := range f.Clips {
		start, end := max(at, rate.frame(c.Start)), rate.frame(c.End)
		if start > at {
			children = append(children, gap{named("Gap.1", ""), plainItem(rate.span(0, start-at))})
		}
		if end > start {
			children = append(children, clip{
				named("Clip.2", c.Name), plainItem(rate.span(0, end-start)),
				object{"DEFAULT_MEDIA": missing{name: named("MissingReference.1", "")}}, "DEFAULT_MEDIA",
			})
		}
		at = max(at, end)
	}
	return indented(timeline{
		named("Timeline.1", f.Title), nil,
		stack{named("Stack.1", "tracks"), item{nil, []any{}, markers, true}, []any{
			track{named("Track.1", "V1"), "Video", plainItem(nil), children},
		}},
	})
}

// comment says which steps a marker's chapter holds.
func comment(c chapters.Chapter) string {
	if len(c.Steps) < 2 {
		return "chapter"
	}
	return fmt.Sprintf("chapter of %d steps", len(c.Steps))
}

func named(schema, words string) name { return name{schema, object{}, words} }

// plainItem has neither effects nor markers.
func plainItem(in any) item { return item{in, []any{}, []any{}, true} }

// The objects below have the keys that library 0.18 insists on and those it
// writes itself; the order of the fields is the order in the file.
type (
	object map[string]any

	name struct {
		Schema   string `json:"OTIO_SCHEMA"`
		Metadata object `json:"metadata"`
		Name     string `json:"name"`
	}
	item struct {
		Range   any   `json:"source_range"` // a timeRange, or nil for the whole
		Effects []any `json:"effects"`
		Markers []any `json:"markers"`
		Enabled bool  `json:"enabled"`
	}
	timeline struct {
		name
		Start  any   `json:"global_start_time"`
		Tracks stack `json:"tracks"`
	}
	stack struct {
		name
		item
		Children []any `json:"children"`
	}
	track struct {
		name
		Kind string `json:"kind"`
		item
		Children []any `json:"children"`
	}
	gap struct {
		name
		item
	}
	clip struct {
		name
		item
		Media  object `json:"media_references"`
		Active string `json:"active_media_reference_key"`
	}
	missing struct {
		name
		Available any `json:"available_range"`
		Bounds    any `json:"available_image_bounds"`
	}
	marker struct {
		name
		Color   string    `json:"color"`
		Comment string    `json:"comment"`
		Range   timeRange `json:"marked_range"`
	}
	timeRange struct {
		Schema   string       `json:"OTIO_SCHEMA"`
		Start    rationalTime `json:"start_time"`
		Duration rationalTime `json:"duration"`
	}
	rationalTime struct {
		Schema string `json:"OTIO_SCHEMA"`
		Rate   double `json:"rate"`
		Value  double `json:"value"`
	}
)

// double is a number written with its point: the library's fields are doubles.
type double float64

// MarshalJSON writes whole numbers as 25.0.
func (d double) MarshalJSON() ([]byte, error) {
	if d == double(int64(d)) {
		return strconv.AppendFloat(nil, float64(d), 'f', 1, 64), nil
	}
	return json.Marshal(float64(d))
}

// span is a stretch of frames.
func (r frameRate) span(start, length int64) timeRange {
	at := func(frame int64) rationalTime {
		return rationalTime{"RationalTime.1", double(r.FPS()), double(frame)}
	}
	return timeRange{"TimeRange.1", at(start), at(length)}
}
