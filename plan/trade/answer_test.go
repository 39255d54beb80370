package trade

import (
	"slices"
	"strings"
	"testing"
)

// What no row holds is worked out by the functions whose figures stand in
// TestStateOfCharge, TestShockBand, TestNoiseDose, TestLevelAt and the others.
func TestAnswer(t *testing.T) {
	for _, c := range []struct {
		table, key string
		want       []string // the rows' cells
	}{
		{"battery", "11.64", []string{"flooded lead-acid 11.64 discharged", "AGM lead-acid 11.64 discharged"}},
		{"battery", "12.5 V", []string{"flooded lead-acid 12.5 75% to 100%", "AGM lead-acid 12.5 50% to 75%"}},
		{"battery", "24.4 V", []string{"flooded lead-acid 24.4 50% to 75%", "AGM lead-acid 24.4 25% to 50%"}},
		{"battery", "14.4 V", nil}, // on charge: no rest voltage
		{"battery", "12.4 A", nil},
		{"battery", "12.4 V AGM", nil}, // a word that it does not understand
		{"noise", "98", []string{"98 158 23.8 7.5"}},
		{"noise", "100 dB(A) 30 min", []string{"100 120 15 4.72", "30 min, share of a day's 25% 200% 635%"}},
		{"noise", "116 1 min", []string{"116 0 0.372 0.117", "1 min, share of a day's none is permitted 269% 853%"}},
		{"sound", "110 2 m 0.5 m", []string{"110 dB(A) (at 2 m) 122 122 0.5 m"}},
		{"sound", "bench 1 m", []string{"car horn, bench test, 12 V (at 2 m) 111 124 1 m"}},
		{"sound", "ceiling 1 m", nil}, // at the ear, whatever the distance
		{"wire", "1.5 mm² 10 A 5 m", []string{"a wire of the same kind 1.15 1.27 10.6", "the body, whose own loss comes on top 0.575 0.635 5.29"}},
		{"wire", "1.5 10 A 5 m 70 °C", []string{"a wire of the same kind 1.38 1.52 12.7", "the body, whose own loss comes on top 0.688 0.76 6.33"}},
		{"wire", "AWG 16 10 A", nil},
		{"thread", "M8", nil},
	} {
		table, ok := TableNamed(c.table)
		if !ok {
			t.Fatalf("no table %q", c.table)
		}
		var got []string
		answer, ok := table.Answer(c.key)
		for _, r := range answer.Rows {
			if got = append(got, strings.Join(r.Cells, " ")); r.Source == "" || len(r.Cells) != len(answer.Columns) {
				t.Errorf("look %s %s: %q has the source %q", c.table, c.key, r.Cells, r.Source)
			}
		}
		if !slices.Equal(got, c.want) || ok != (c.want != nil) {
			t.Errorf("look %s %s: %q, %v; want %q", c.table, c.key, got, ok, c.want)
		}
	}
}

// A voltage is held to the line of its own kind of current.
func TestAnswerVoltage(t *testing.T) {
	table, _ := TableNamed("voltage")
	for key, want := range map[string]string{"60 V": "beyond", "60 V AC": "beyond", "60 v dc": "within", "121 DC": "beyond", "0.05 kV": "within"} {
		answer, _ := table.Answer(key)
		at := slices.IndexFunc(answer.Rows, func(r Row) bool { return r.Cells[0] == ExtraLow })
		if at < 0 || answer.Rows[at].Cells[2] != want {
			t.Errorf("look voltage %s: %v; want %s", key, answer.Rows, want)
		}
	}
}

// A battery that wants its charger says so before anything else.
func TestAnswerWantsCharge(t *testing.T) {
	table, _ := TableNamed("battery")
	for key, wants := range map[string]bool{"12 V": true, "12.6 V": false, "24 V": true} {
		answer, _ := table.Answer(key)
		if has := strings.Contains(strings.Join(answer.Notes, " "), "charge it before"); has != wants {
			t.Errorf("look battery %s: %q", key, answer.Notes)
		}
	}
}
