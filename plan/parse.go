package plan

import (
	"fmt"
	"strings"

	"fixslate/plan/trade"
)

// The small forms that stand in a plan's texts.

// measureLike reads a measure of the dimension that a key's example has: a
// torque in volts is no torque. An angle may stand for a torque ("90°"), and
// words for any.
func measureLike(example string) func(text string) (trade.Measure, error) {
	return func(text string) (trade.Measure, error) {
		m, err := trade.ParseMeasure(text)
		if bare(text) { // with its words, so that a quote of it is no second fault
			return m, fmt.Errorf("%q has no unit; write it with one, like %s", text, example)
		}
		if err != nil || !m.Measured() {
			return m, err
		}
		like, err := trade.ParseMeasure(strings.Trim(example, `"`))
		if err != nil {
			return m, err
		}
		got, want := m.Unit.Dimension(), like.Unit.Dimension()
		if got == want || got == trade.Angle && want == trade.Torque {
			return m, nil
		}
		return m, fmt.Errorf("%q measures %s, and %s is wanted; write it like %s", text, got, want, example)
	}
}

func parseDrive(text string) (trade.Drive, error) {
	d, ok := trade.ParseDrive(text)
	if !ok {
		return d, fmt.Errorf("%q is no drive; write it like \"8 mm\", \"T25\" or \"PH2\"", text)
	}
	return d, nil
}

// parseExit reads "step:id", "test:id", "stop: why" or advice.
func parseExit(text string) (Exit, error) {
	word, rest, found := strings.Cut(text, ":")
	rest = strings.TrimSpace(rest)
	if found {
		switch strings.ToLower(strings.TrimSpace(word)) {
		case "step":
			return Exit{Kind: ToStep, ID: rest}, nil
		case "test":
			return Exit{Kind: ToTest, ID: rest}, nil
		case "stop":
			return Exit{Kind: Stop, Text: Text{Source: rest}}, nil
		}
		if word, id := strings.TrimSpace(word), strings.TrimSpace(rest); isID(word) && isID(id) {
			return Exit{}, fmt.Errorf("%q leads nowhere; write step:%s or test:%s, stop: and why, or advice in words", text, id, id)
		}
	}
	if strings.TrimSpace(text) == "stop" {
		return Exit{Kind: Stop}, nil
	}
	return Exit{Kind: Advice, Text: Text{Source: text}}, nil
}

// parseCondition reads "test:ID passes", "test:ID fails" or "test:ID OUTCOME".
func parseCondition(text string) (Condition, error) {
	f := strings.Fields(text)
	if len(f) != 2 || !strings.HasPrefix(f[0], "test:") {
		if len(f) == 2 {
			outcome := f[1]
			switch outcome {
			case "passed", "pass", "good":
				outcome = "passes"
			case "failed", "fail", "bad":
				outcome = "fails"
			}
			return Condition{}, fmt.Errorf("%q is no condition; write \"test:%s %s\", with the id of a test and passes, fails or an outcome's id", text, f[0], outcome)
		}
		return Condition{}, fmt.Errorf("%q is no condition; write \"test:ID passes\", \"test:ID fails\" or \"test:ID\" and an outcome's id", text)
	}
	return Condition{Test: strings.TrimPrefix(f[0], "test:"), Outcome: f[1]}, nil
}

// parseBreak reads "12:30 30m".
func parseBreak(text string) (Break, error) {
	f := strings.Fields(text)
	if len(f) != 2 {
		return Break{}, fmt.Errorf("%q is no break; write clock and length like \"12:30 30m\"", text)
	}
	at, err := parseClock(f[0])
	if err != nil {
		return Break{}, err
	}
	length, err := ParseDuration(f[1])
	return Break{at, length}, err
}

// parseShotNeed reads a state, or "not" and a state.
func parseShotNeed(text string) (ShotNeed, error) {
	state, not := strings.CutPrefix(text, "not ")
	return ShotNeed{State: strings.TrimSpace(state), Not: not}, nil
}

// parseRef reads "kind:id"; an id alone is settled when all ids are known.
func parseRef(text string) (Ref, error) {
	kind, id, found := strings.Cut(text, ":")
	if !found {
		return Ref{ID: text}, nil
	}
	return Ref{Kind(kind), id}, nil
}
