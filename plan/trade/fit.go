package trade

import (
	"slices"
	"strings"
)

// Verdict says how a drive stands to a thread and its head.
type Verdict int

// The verdicts, from "cannot say" to "no such size".
const (
	NoTable    Verdict = iota // no table for this thread, head or drive: nothing can be said
	FitsNow                   // a standard in force has this size for this thread
	FitsElse                  // another region's, trade's or makers' practice has it
	FitsOlder                 // only an older standard has it
	OtherHead                 // the size belongs to this thread with another head
	NoSuchSize                // no standard known here has it for this thread
)

// Fit is the answer of DriveFits.
type Fit struct {
	Verdict  Verdict
	Standard string  // the standard that has the size; empty for NoTable and NoSuchSize
	Head     string  // the head or kind it has it for
	Usual    []Drive // the sizes that standards in force give this thread and head
}

// DriveFits says whether a drive is one that a thread with that head has. The
// head is free words ("hex", "flange bolt", "pan head"); empty words admit any.
// A width that any standard gives the thread fits, because a flange bolt is
// called a bolt and a nut a bolt; NoSuchSize means that none does. Heads that
// follow no standard for screws (drain plugs, spark plugs, unions, banjo bolts)
// get NoTable.
func DriveFits(thread, head string, drive Drive) Fit {
	if _, ok := ParseThread(thread); !ok || drive.Size == "" || unlisted.in(strings.ToLower(head)) {
		return Fit{}
	}
	rows := fitRows(thread, drive.Kind)
	if len(rows) == 0 {
		return Fit{}
	}
	asked := headsOf(head)
	fit := Fit{Verdict: NoSuchSize, Usual: usual(rows, asked)}
	var other *fitRow
	for i, r := range rows {
		switch {
		case !r.drive.Turns(drive):
		case len(asked) == 0 || slices.ContainsFunc(asked, r.is):
			return Fit{verdictOf(r.status), r.standard, r.head, fit.Usual}
		case other == nil:
			other = &rows[i]
		}
	}
	if other != nil {
		return Fit{OtherHead, other.standard, other.head, fit.Usual}
	}
	if !slices.ContainsFunc(rows, func(r fitRow) bool { return r.status != Practice }) {
		return Fit{Usual: fit.Usual} // only memory speaks: too weak to deny a size
	}
	return fit
}

// FastenerDrives reads what turns a fastener from its drive and its head. A
// bare size is a hexagon, and on a socket, button, countersunk or set screw it
// is the one inside, "5 mm hex" too: those heads have no flats outside (ISO 4762,
// ISO 7380-1, ISO 10642, ISO 4026).
func FastenerDrives(drive, head string) []Drive {
	drives := ParseDrives(drive)
	heads := headsOf(head)
	inside := len(heads) > 0 && !slices.ContainsFunc(heads, func(h string) bool { return !slices.Contains(insideHeads, h) })
	for i, d := range drives {
		if inside && d.Kind == Hex {
			drives[i].Kind = HexKey
		}
	}
	return drives
}

// insideHeads are the table's words for heads whose hexagon is inside.
var insideHeads = []string{"socket", "button", "countersunk", "set screw"}

// Special holds for a fastener that by its name is no screw of the tables: a
// drain plug, a bleed nipple, a wheel axle. Its last word says what it is, so
// that an "axle cover screw" stays a screw.
func Special(what string) bool { return len(what) <= maxDriveText && special.in(strings.ToLower(what)) }

var special = patternOf(`\b(?:plug|union|banjo(?: bolt)?|nipple|bleeder|sensor|fitting|valve|coupling|gland|adapter|axle|spindle|skewer|pin|pivot|insert|jet|cap|ring nut|lock[ -]?ring)s?$`,
	"plug", "union", "banjo", "nipple", "bleeder", "sensor", "fitting", "valve", "coupling", "gland", "adapter", "axle", "spindle", "skewer", "pin", "pivot", "insert", "jet", "cap", "ring")

// fitRow is a row of either table.
type fitRow struct {
	drive          Drive
	head, standard string
	status         Status
}

// is holds for a row about that head: "flange bolt" is about "flange" and
// about "bolt", and a plain hexagon's row about either.
func (r fitRow) is(head string) bool { return strings.Contains(r.head, head) }

// fitRows are the rows for a thread and a kind of drive, standards in force
// first; security recesses have the sizes of the open ones.
func fitRows(thread, kind string) []fitRow {
	var rows []fitRow
	if kind == Hex {
		for _, f := range FlatsFor(thread) {
			rows = append(rows, fitRow{Drive{Hex, f.Size}, f.Kind, f.Standard, f.Status})
		}
		return rows
	}
	listed := kind
	if kind == HexalobularPin {
		listed = Hexalobular
	}
	for _, r := range RecessesFor(thread) {
		if r.Drive.Kind == listed {
			rows = append(rows, fitRow{Drive{kind, r.Drive.Size}, r.Head, r.Standard, r.Status})
		}
	}
	return rows
}

func verdictOf(s Status) Verdict {
	switch s {
	case InForce:
		return FitsNow
	case Regional, Practice:
		return FitsElse
	}
	return FitsOlder
}

// usual are the sizes in force for the heads asked for, or for all.
func usual(rows []fitRow, asked []string) []Drive {
	var list []Drive
	for _, r := range rows {
		if r.status == InForce && (len(asked) == 0 || slices.ContainsFunc(asked, r.is)) {
			list = add(list, r.drive)
		}
	}
	if list == nil && asked != nil {
		return usual(rows, nil)
	}
	return list
}

// unlisted are heads and fasteners that follow no table of screws.
var unlisted = patternOf(`\b(?:plug|union|banjo|bleed\w*|sensor|stud|fitting|valve|coupling|gland|clamp|clip|shoulder|adapter)s?\b`,
	"plug", "union", "banjo", "bleed", "sensor", "stud", "fitting", "valve", "coupling", "gland", "clamp", "clip", "shoulder", "adapter")

// heads are the words by which authors name a head, and the table's word for
// it. A hexagon is no word for a head here: it says the drive again.
var heads = []struct {
	form pattern
	head string
}{
	{patternOf(`\bflang`, "flang"), "flange"},
	{patternOf(`\bwheel\b|\blug\b`, "wheel", "lug"), "wheel"},
	{patternOf(`\bbutton|\bdome`, "button", "dome"), "button"},
	{patternOf(`\bsocket|\bcap (?:head|screw)|\bcylind`, "socket", "cap", "cylind"), "socket"},
	{patternOf(`\bset ?screw|\bgrub`, "set", "grub"), "set screw"},
	{patternOf(`\bcounter ?sunk|\bcsk|\bflat head`, "counter", "csk", "flat"), "countersunk"},
	{patternOf(`\bcheese`, "cheese"), "cheese"},
	{patternOf(`\bpan\b|\bpan ?head`, "pan"), "pan"},
}

// headsOf are the table's words for a head; none for a head that no table
// knows, which then admits any.
func headsOf(head string) []string {
	if len(head) > maxDriveText {
		return nil
	}
	var list []string
	head = strings.ToLower(head)
	for _, h := range heads {
		if h.form.in(head) {
			list = append(list, h.head)
		}
	}
	return list
}

// ToolBears is the torque in N·m that a plain hex key or spanner of that size is
// proved to: keys by JIS B 4648, spanners by ISO 1711-1. A torque above it
// calls for another tool, or is a slip. False for drives not in these tables.
func ToolBears(d Drive) (float64, bool) {
	mm, ok := d.Millimetres()
	if !ok {
		return 0, false
	}
	rows := spannerProof
	if d.Kind == HexKey {
		rows = keyProof
	} else if d.Kind != Hex {
		return 0, false
	}
	for _, r := range rows {
		if same(r.size, mm) {
			return r.torque, true
		}
	}
	return 0, false
}

type proofRow struct{ size, torque float64 } // mm, N·m

const (
	keyProofSource = "JIS B 4648:2008, minimum torque a hex key bears (a maker's excerpt)"
	spannerSource  = "DIN ISO 1711-1, test torque of spanners (a hand-tool maker's sheet)"
)

var (
	keyProof     = []proofRow{{1.5, 0.82}, {2, 1.9}, {2.5, 3.8}, {3, 6.6}, {4, 16}, {5, 30}, {6, 52}, {8, 120}, {10, 220}, {12, 370}, {14, 590}, {17, 980}, {19, 1360}}
	spannerProof = []proofRow{{7, 25.2}, {8, 34.5}, {9, 45.4}, {10, 58.1}, {11, 72.7}, {12, 89.1}, {13, 107}, {14, 128}, {15, 150}, {16, 175}, {17, 201}, {18, 230}, {19, 261}, {20, 294}}
)
