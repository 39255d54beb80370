package plan

import (
	"strconv"
	"strings"
	"time"

	"github.com/pelletier/go-toml/v2/unstable"
)

// values builds the tree of a file's values on the walk that finds their places:
// decoding the text a second time takes longer than all else that is done with
// it. It knows the TOML that plans are written in. At anything else (keys with
// dots, numbers in other bases, times, headers out of order, what stands twice)
// it gives up, and BurntSushi/toml decodes the text, or says what is wrong in it.
// A test holds the two to the same values.
type values struct {
	text   string
	root   map[string]any
	here   map[string]any            // the table of the last header
	opened map[string]map[string]any // tables of headers, by path
	odd    bool                      // given up
}

func newValues(text string) values {
	root := map[string]any{}
	return values{text: text, root: root, here: root, opened: map[string]map[string]any{"": root}}
}

// open makes the table of a header whose last part is name, below the table at
// path outer; path is its own.
func (v *values) open(outer, path, name string, kind unstable.Kind) {
	parent := v.opened[outer]
	if parent == nil || path == "" {
		v.odd = true
		return
	}
	v.here = map[string]any{}
	v.opened[path] = v.here
	before, twice := parent[name]
	if kind == unstable.Table {
		v.odd = v.odd || twice
		parent[name] = v.here
		return
	}
	rows, isList := before.([]map[string]any)
	v.odd = v.odd || twice && !isList
	parent[name] = append(rows, v.here)
}

// put sets one key of a table.
func (v *values) put(table map[string]any, key *unstable.Node, value any) {
	name := v.same(v.slice(key, 0), key.Data)
	if _, twice := table[name]; twice || key.Next() != nil {
		v.odd = true
	}
	table[name] = value
}

// scalar is the value of a node without others in it.
func (v *values) scalar(n *unstable.Node) any {
	switch n.Kind {
	case unstable.String:
		return v.literal(n)
	case unstable.Bool:
		return n.Data[0] == 't'
	case unstable.Integer:
		if i, err := strconv.Atoi(string(n.Data)); err == nil && isFigure(n.Data) {
			return int64(i)
		}
	case unstable.Float:
		if f, err := strconv.ParseFloat(string(n.Data), 64); err == nil && isFigure(n.Data) {
			return f
		}
	case unstable.LocalDate:
		if day, err := time.Parse(time.DateOnly, string(n.Data)); err == nil {
			return day
		}
	}
	v.odd = true
	return nil
}

// isFigure holds for a number of digits and one point at most, without signs,
// exponents and zeros in front.
func isFigure(number []byte) bool {
	for _, c := range number {
		if (c < '0' || c > '9') && c != '.' {
			return false
		}
	}
	return len(number) == 1 || number[0] != '0' || number[1] == '.'
}

// literal is the text of a string.
func (v *values) literal(n *unstable.Node) string {
	quotes := 1
	if raw := v.slice(n, 0); len(raw) >= 6 && raw[0] == raw[1] && raw[1] == raw[2] {
		quotes = 3
	}
	return v.same(v.slice(n, quotes), n.Data)
}

// same is a decoded text, of which no copy is made where it stands in the file
// as it is.
func (v *values) same(written string, decoded []byte) string {
	written = strings.TrimPrefix(written, "\n") // the first line end of many lines is none of theirs
	if written == string(decoded) {
		return written
	}
	return string(decoded)
}

// slice is what stands in the file for a node, without so many quotes on either
// side.
func (v *values) slice(n *unstable.Node, quotes int) string {
	return v.text[int(n.Raw.Offset)+quotes : int(n.Raw.Offset+n.Raw.Length)-quotes]
}
