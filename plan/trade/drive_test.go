package trade

import (
	"slices"
	"strings"
	"testing"
)

func TestParseDrive(t *testing.T) {
	for in, want := range map[string]Drive{
		"8 mm": {Hex, "8 mm"}, "8mm": {Hex, "8 mm"}, "1/2 in": {Hex, "1/2 in"}, `7/16"`: {Hex, "7/16 in"}, "10 mm hex": {Hex, "10 mm"}, "hex": {Kind: Hex},
		"6 mm hex key": {HexKey, "6 mm"}, "6 mm Allen": {HexKey, "6 mm"}, "2.5mm hex key": {HexKey, "2.5 mm"},
		"T25": {Hexalobular, "T25"}, "Torx 25": {Hexalobular, "T25"}, "TX25": {Hexalobular, "T25"},
		"TR20": {HexalobularPin, "T20"}, "T20 security": {HexalobularPin, "T20"}, "E10": {HexalobularOutside, "E10"},
		"PH2": {CrossH, "PH2"}, "Phillips #2": {CrossH, "PH2"}, "No. 2 Phillips": {CrossH, "PH2"}, "cross recess H": {Kind: CrossH},
		"PZ2": {CrossZ, "PZ2"}, "Pozidriv 2": {CrossZ, "PZ2"}, "slotted": {Kind: Slotted}, "5.5 mm slotted": {Slotted, "5.5 mm"}, "flat blade": {Kind: Slotted}, "4 mm flat": {Slotted, "4 mm"},
		"#2 square": {Square, "#2"}, "M8 triple square": {TripleSquare, "M8"}, "P5": {Pentalobular, "P5"}, "Y0": {TriWing, "Y0"},
		"hex 8": {Hex, "8 mm"}, "5 mm hex socket": {HexKey, "5 mm"}, "10 mm flange": {Hex, "10 mm"}, "8 mm (5/16 in)": {Hex, "8 mm"}, "13 mm AF": {Hex, "13 mm"}, "cross": {Kind: CrossH},
	} {
		got, ok := ParseDrive(in)
		if !ok || got != want {
			t.Errorf("ParseDrive(%q) = %+v, %v; want %+v", in, got, ok, want)
		}
		if again, ok := ParseDrive(got.String()); !ok || again != got {
			t.Errorf("ParseDrive(%q) prints %q, which reads as %+v, %v", in, got, again, ok)
		}
	}
	for _, in := range []string{"", "10", "hand", "8 mm or PH2", "M8", "glued"} {
		if got, ok := ParseDrive(in); ok {
			t.Errorf("ParseDrive(%q) = %+v; want none", in, got)
		}
	}
}

// A head that takes two tools names both.
func TestParseDrives(t *testing.T) {
	for in, want := range map[string][]Drive{
		"8 mm hex / PH2": {{Hex, "8 mm"}, {CrossH, "PH2"}}, "8 mm or PH2": {{Hex, "8 mm"}, {CrossH, "PH2"}}, "8 mm": {{Hex, "8 mm"}}, "glue": nil,
		"7 mm hex or slotted": {{Hex, "7 mm"}, {Kind: Slotted}},
	} {
		if got := ParseDrives(in); !slices.Equal(got, want) {
			t.Errorf("ParseDrives(%q) = %+v; want %+v", in, got, want)
		}
	}
}

func TestDrivesOf(t *testing.T) {
	for in, want := range map[string]string{
		"8 mm nut driver":                               "8 mm",
		"half inch nut driver":                          "1/2 in",
		"three-quarter inch spanner":                    "3/4 in",
		"half inch drive ratchet":                       "",
		"10 mm socket":                                  "10 mm",
		"10 and 13 mm spanners":                         "10 mm, 13 mm",
		"8, 10 and 13 mm sockets":                       "8 mm, 10 mm, 13 mm",
		"8/10/13 mm sockets":                            "8 mm, 10 mm, 13 mm",
		"10 x 13 mm spanner":                            "10 mm, 13 mm",
		"8–11 mm socket set":                            "8 mm, 9 mm, 10 mm, 11 mm",
		"T25 bit":                                       "T25",
		"T20, T25 and T30 bits":                         "T20, T25, T30",
		"No. 2 Phillips screwdriver":                    "PH2",
		"No. 1 and No. 2 Phillips screwdrivers":         "PH1, PH2",
		"hex keys 4–6 mm":                               "4 mm hex key, 5 mm hex key, 6 mm hex key",
		"8 mm hex bit":                                  "8 mm hex key",
		"adjustable spanner":                            "hex",
		"socket set":                                    "hex",
		"1/2 in drive ratchet":                          "",
		"1/2 in drive ratchet with 17 mm socket":        "17 mm",
		"9/16 spanner":                                  "9/16 in",
		"flat-blade screwdriver":                        "slotted",
		"E10 socket":                                    "E10",
		"screwdriver":                                   "cross recess H, slotted",
		"wheel brace":                                   "17 mm, 19 mm, 21 mm, 22 mm",
		"spark plug socket 16 mm":                       "16 mm",
		"multimeter":                                    "",
		"torque wrench":                                 "",
		"8 mm drill bit":                                "",
		"jack stands 3 t":                               "",
		"drivers T10 to T25":                            "T10, T15, T20, T25",
		"PH0–PH2 screwdrivers":                          "PH0, PH1, PH2",
		"T-handle 4 mm hex":                             "4 mm hex key",
		"breaker bar 1/2 in with 19 mm socket":          "19 mm",
		`3/8" ratchet, 10mm socket, 6" extension`:       "10 mm",
		"16 mm open-ender":                              "16 mm",
		"hex key 2.5":                                   "2.5 mm hex key",
		"two spanners":                                  "hex",
		"torque wrench with 10 mm socket":               "10 mm",
		"torque wrench 5–25 N·m":                        "",
		"4 to 6 mm sockets":                             "4 mm, 5 mm, 5.5 mm, 6 mm",
		"21 mm spark-plug socket":                       "21 mm",
		"screwdriver and 10 mm socket":                  "cross recess H, slotted, 10 mm",
		"7 mm nut driver, flat screwdriver and PH2 bit": "7 mm, slotted, PH2",
		"snap-ring pliers":                              "",
	} {
		var got []string
		for _, d := range DrivesOf(in) {
			got = append(got, d.String())
		}
		if strings.Join(got, ", ") != want {
			t.Errorf("DrivesOf(%q) = %q; want %q", in, got, want)
		}
	}
}

func TestTurns(t *testing.T) {
	for _, c := range []struct {
		tool, fastener string
		want           bool
	}{
		{"8 mm", "8 mm", true}, {"5/16 in", "8 mm", true}, {"3/4 in", "19 mm", true}, {"1/2 in", "13 mm", false}, {"10 mm", "8 mm", false},
		{"hex", "13 mm", true}, {"8 mm hex key", "8 mm", false}, {"T20 security", "T20", true}, {"T20", "T20 security", false}, {"PH2", "PZ2", false},
	} {
		tool, _ := ParseDrive(c.tool)
		fastener, _ := ParseDrive(c.fastener)
		if got := tool.Turns(fastener); got != c.want {
			t.Errorf("%s turns %s: %v; want %v", c.tool, c.fastener, got, c.want)
		}
	}
}

func FuzzParseDrive(f *testing.F) {
	for _, s := range []string{"8 mm", "T25", "6 mm hex key", "No. 2 Phillips", "8/10/13 mm sockets", "hex keys 4–8 mm", "1-1/8 in socket", "½ drive 17 mm"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if d, ok := ParseDrive(s); ok {
			if again, ok := ParseDrive(d.String()); !ok || again != d {
				t.Errorf("ParseDrive(%q) = %+v, prints %q, which reads as %+v, %v", s, d, d, again, ok)
			}
		}
		for _, d := range DrivesOf(s) {
			if d.Kind == "" {
				t.Errorf("DrivesOf(%q) gives a drive of no kind: %+v", s, d)
			}
		}
	})
}

// A bare size is read by the head it stands beside: socket, button, countersunk
// and set screws have their hexagon inside (ISO 4762, 7380-1, 10642, 4026).
func TestFastenerDrives(t *testing.T) {
	for _, c := range []struct{ drive, head, want string }{
		{"5 mm", "socket", "5 mm hex key"},
		{"4 mm", "button head", "4 mm hex key"},
		{"4 mm", "countersunk", "4 mm hex key"},
		{"5 mm hex key", "socket", "5 mm hex key"},
		{"8 mm", "hex", "8 mm"},
		{"8 mm", "", "8 mm"},
		{"10 mm", "flange", "10 mm"},
		{"T25", "socket", "T25"},
		{"10 mm hex", "button", "10 mm hex key"},
		{"5 mm hex", "socket", "5 mm hex key"},
		{"10 mm hex", "flange", "10 mm"},
	} {
		var got []string
		for _, d := range FastenerDrives(c.drive, c.head) {
			got = append(got, d.String())
		}
		if len(got) != 1 || got[0] != c.want {
			t.Errorf("FastenerDrives(%q, %q) = %q, want %q", c.drive, c.head, got, c.want)
		}
	}
}

func TestSpecial(t *testing.T) {
	for what, want := range map[string]bool{
		"bleed nipple": true, "oil drain plug": true, "Front axle": true, "banjo bolts": true, "pad pins": true,
		"axle cover screws": false, "sensor bracket bolt": false, "valve cover bolts": false, "main jet": true, "": false,
	} {
		if got := Special(what); got != want {
			t.Errorf("Special(%q) = %v", what, got)
		}
	}
}

// A stem stands in whatever its pattern fits: what the pattern finds in the
// names of tools is found with the stems asked first.
func TestStemsMissNothing(t *testing.T) {
	names := []string{"t25", "tx 20", "tr-20", "th20", "tt20h", "t20 security", "security bit torx t-20", "torx 25", "star 6", "6-lobe t10", "external torx e-8", "etorx size 10", "e10", "ph#2", "phillips no. 2", "#2 phillips", "cross-head 1",
		"cross recess h", "pz 2", "pozidriv 2", "no 2 posi", "sq 2", "r1", "robertson #2", "no. 2 square", "xzn m8", "m10 spline", "triple-square 6", "p5", "pentalobe ts4", "tri-wing y0", "y00", "tri-point", "t10 to t30", "ph0-ph3", "e4..e8",
		"1/2 in square drive", "3/8 ratchet", "torque wrench 1/2 in", "6 in long extension", "hexagon socket", "hexalobular with pin", "tamper proof star", "star bits", "nut driver 8", "8 hex", "socket set", "hex head", "10 mm flange", "4-8 mm", "5 to 8 mm",
		"m 8 x 1.25", "m6", "m6-20 mm", "#10-32", "1/4-20 unc", "1", "wheel nut", "lug bolt", "domed", "button head", "cap head", "cylinder head", "set screw", "grub screw", "counter sunk", "csk", "flat head", "cheese head", "pan head",
		"spark-plug", "glow plugs", "sump plug", "bleeder screw", "hose clips", "lock ring hex", "ring nut", "gland", "battery terminal", "union", "banjo bolt", "bleed nipple", "sensor", "fitting", "valve", "coupling", "adapter", "axle", "spindle", "skewer", "pin", "pivot",
		"insert", "main jet", "caps", "stud", "clamp", "clip", "shoulder", "8 mm", "slotted", "flat blade", "4 mm flat", "allen key", "L key 5", "T-handle 4 mm hex", "in-hex", "inhex", "a/f 13", "13 mm AF", "crow's foot 17 mm",
		"tension key", "box-end 10 mm", "six-point 10 mm", "bi-hex 19 mm", "set of bits", "assorted bits", "driver bit kit", "lug wrench", "wheel brace", "drill bits", "tap", "dies", "centre punch",
		"mains socket", "filter wrench", "extension", "minus screwdriver", "plain screwdriver", "straight blade", "sl 5", "socket head cap", "internal hex 6", "ratchet", "bolt", "open-ender 16 mm"}
	for _, name := range names {
		text := driveText(name)
		for _, p := range patterns() {
			if got, want := p.in(text), p.form().MatchString(text); got != want {
				t.Errorf("%s in %q: %v, and %v without its stems", p.form(), name, got, want)
			}
		}
	}
	for _, n := range []string{"8", "5.5", "08", "13", "2.50", "0.7"} {
		for _, unit := range []string{"mm", " mm"} {
			slow := sizesAlone(n + unit)
			if got := ParseDrives(n + unit); !slices.Equal(got, slow) {
				t.Errorf("ParseDrives(%q) = %v, and %v by the patterns", n+unit, got, slow)
			}
		}
	}
}

// Plain names of tools read as the patterns would read them.
func TestPlainTools(t *testing.T) {
	for _, tool := range []string{"spanner", "socket", "nut driver", "hex key", "screwdriver", "bit"} {
		for _, size := range []string{"8 mm", "10mm", "5.5 mm", "08 mm", "0.7 mm", "108 mm", "t8", "t25", "t250", "t05", "ph0", "ph2", "ph6", "ph12", "8", "t", "mm", "1/2 in"} {
			text := size + " " + tool
			if got, want := drivesOfTool(text), drivesByPatterns(text); !slices.Equal(got, want) {
				t.Errorf("%q is %v, and %v by the patterns", text, got, want)
			}
		}
	}
}

// patterns are those that have stems.
func patterns() []pattern {
	list := []pattern{socketInside, noDriver, wheelBrace, bitSet, keyWords, slotWords, hexWords, headWords, spanMark, codeSpan, special, unlisted, metricForm, inchForm}
	list = append(list, ratchetSquares...)
	for _, c := range codes {
		list = append(list, c.form)
	}
	for _, w := range driveWords {
		list = append(list, w.form)
	}
	for _, h := range heads {
		list = append(list, h.form)
	}
	for _, n := range namedBands {
		list = append(list, n.name)
	}
	return list
}

// sizesAlone reads a size by the patterns.
func sizesAlone(text string) []Drive {
	found := readDrives(text)
	for _, d := range bareHexagons(text) {
		found = add(found, d)
	}
	return found
}

// A size that nobody sells is a slip, and the sizes beside it may be meant.
func TestSold(t *testing.T) {
	for text, want := range map[string]string{
		"T25": "", "T26": "T25 T27", "T52": "T50 T55", "T250": "T100",
		"5 mm hex key": "", "37 mm hex key": "36 mm hex key", "0.5 mm hex key": "0.7 mm hex key", "8.3 mm hex key": "8 mm hex key 9 mm hex key",
		"3/16 in hex key": "", "PH2": "", "8.3 mm": "", "hex key": "",
	} {
		d, ok := ParseDrive(text)
		if !ok {
			t.Errorf("%q is no drive", text)
			continue
		}
		near, sold := d.Sold()
		var names []string
		for _, n := range near {
			names = append(names, n.String())
		}
		if got := strings.Join(names, " "); got != want || sold != (want == "") {
			t.Errorf("%s: %v, near %q, want %q", text, sold, got, want)
		}
	}
}
