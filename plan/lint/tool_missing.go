package lint

import (
	"fmt"
	"strconv"
	"strings"
	"sync"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var toolMissing = Rule{Name: "tool-missing", Group: Completeness, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	named := sync.OnceValue(p.drivesNamed)
	for i := range p.Plan.Fasteners {
		f := &p.Plan.Fasteners[i]
		drives := p.drives[i]
		ref := plan.Ref{Kind: plan.KindFastener, ID: f.ID}
		if len(drives) == 0 || len(p.uses(ref)) == 0 || p.turned(f, drives) || turnsAny(named(), drives) {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("no tool turns %s (%s)", f.What.Print, f.Drive),
			Hint:    fmt.Sprintf("add the tool to the step: tools = [%q]", suggested(drives[0])),
			Path:    row(plan.KindFastener, i, "drive"),
		})
	}
}}

// meantDrives gives the drives of each fastener. A bare size, "2 mm", is that of
// a hex key where such a key is among the plan's tools and no tool goes over a
// head of that size; a "6 mm hex" also where its thread has no other.
func meantDrives(p *plan.Plan) [][]trade.Drive {
	have := map[trade.Drive]bool{}
	for i := range p.Tools {
		for _, d := range p.Tools[i].Drives {
			have[d] = true
		}
	}
	all := make([][]trade.Drive, len(p.Fasteners))
	for i := range p.Fasteners {
		f := &p.Fasteners[i]
		all[i] = trade.FastenerDrives(f.Drive, f.Head)
		if len(all[i]) != 1 || all[i][0].Kind != trade.Hex || have[all[i][0]] || have[trade.Drive{Kind: trade.Hex}] {
			continue
		}
		if key := (trade.Drive{Kind: trade.HexKey, Size: all[i][0].Size}); have[key] || insideHex(f, all[i][0], key) {
			all[i] = []trade.Drive{key}
		}
	}
	return all
}

// insideHex holds for a "6 mm hex" on M8: no head of that thread is 6 mm over its
// flats, and a socket in one is.
func insideHex(f *plan.Fastener, over, key trade.Drive) bool {
	return f.Thread != "" && strings.Contains(strings.ToLower(f.Drive), "hex") && !strings.Contains(strings.ToLower(f.Head), "hex") &&
		trade.DriveFits(f.Thread, f.Head, over).Verdict == trade.NoSuchSize && trade.DriveFits(f.Thread, f.Head, key).Verdict == trade.FitsNow
}

// turned holds where a tool of the plan turns one of the drives.
func (p *Pass) turned(f *plan.Fastener, drives []trade.Drive) bool {
	for i := range p.Plan.Tools {
		t := &p.Plan.Tools[i]
		if plan.Meets(t.Variants, f.Variants) && turnsAny(t.Drives, drives) {
			return true
		}
	}
	return false
}

// drivesNamed are the drives of all tools that the texts of steps name.
func (p *Pass) drivesNamed() []trade.Drive {
	seen := map[trade.Drive]bool{}
	var named []trade.Drive
	for _, w := range p.texts {
		if w.Step < 0 {
			continue
		}
		for _, d := range trade.DrivesOf(w.Source) {
			if !seen[d] {
				seen[d] = true
				named = append(named, d)
			}
		}
	}
	return named
}

// suggested names a tool for a drive.
func suggested(d trade.Drive) string {
	if d.Kind == trade.Hex && !under(d.Size, smallestFlats) {
		return d.Size + " socket"
	}
	if d.Kind == trade.HexKey || d.Kind == trade.Hex {
		return d.Size + " hex key"
	}
	return d.String() + " driver"
}

// smallestFlats is the width of the smallest nut, M1.6, in mm (ISO 4032): a
// hexagon under it is a socket in the screw, and a key turns it.
const smallestFlats = 3.2

func under(size string, millimetres float64) bool {
	n, err := strconv.ParseFloat(strings.TrimSuffix(size, " mm"), 64)
	return err == nil && strings.HasSuffix(size, " mm") && n < millimetres
}
