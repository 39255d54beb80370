package plan

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"fixslate/plan/diag"
)

// Decode reads a plan and the files it uses. All faults come back at once, as
// findings of severity Error; after a syntax error nothing else can be read
// and the plan is nil. Findings of severity Note never stop anything. files is
// the folder of the plan; nil refuses every use.
func Decode(src *diag.Source, files fs.FS) (*Plan, *Spans, []diag.Finding) {
	p := &Plan{}
	spans, findings := decodeFile(src, p, nil)
	if spans == nil {
		return nil, &Spans{whole: diag.Place{Source: src}}, findings
	}
	d := &decoder{p, faults{spans, findings}}
	d.useFiles(src, files)
	d.defaults()
	d.identify()
	d.resolve()
	d.fill()
	d.states()
	d.cautions()
	d.spare()
	for i := range d.findings {
		if d.findings[i].Step == "" {
			if at := p.RefAt(d.findings[i].Path); at.Kind == KindStep {
				d.findings[i].Step = at.ID
			}
		}
	}
	diag.Sort(d.findings)
	if diag.Worst(d.findings) == diag.Error {
		return nil, spans, d.findings
	}
	return p, spans, d.findings
}

// decoder holds a plan between reading and finished.
type decoder struct {
	plan *Plan
	faults
}

// visit walks every key of the plan.
func (d *decoder) visit(each func(target)) {
	planTable.visit(&element{step: -1}, d.plan, each)
}

// decodeFile reads one file into p. only lists the top keys that a used file
// may hold; nil allows all. The spans are nil where nothing could be read.
func decodeFile(src *diag.Source, p *Plan, only []string) (*Spans, []diag.Finding) {
	if strings.TrimSpace(src.Text) == "" {
		if only != nil {
			return &Spans{whole: diag.Place{Source: src}}, nil
		}
		return nil, []diag.Finding{{
			Rule: "key-missing", Severity: diag.Error, At: diag.Place{Source: src},
			Message: "the plan is empty", Hint: "fixslate new NAME writes a plan to start from",
		}}
	}
	spans, findings := index(src)
	if diag.Worst(findings) == diag.Error {
		return nil, findings
	}
	values := map[string]any{}
	if _, err := toml.Decode(src.Text, &values); err != nil {
		return nil, append(findings, decodeFault(src, err))
	}
	r := &reader{faults: faults{spans, findings}}
	top := &element{step: -1}
	if only == nil {
		planTable.read(r, top, values, p)
	} else {
		r.readUsed(top, values, p, only)
	}
	return spans, r.findings
}

// decodeFault puts what BurntSushi/toml refuses after a sound walk into our
// form: keys and tables that stand twice, numbers out of range, dates that are
// none.
func decodeFault(src *diag.Source, err error) diag.Finding {
	f := diag.Finding{Rule: "syntax", Severity: diag.Error, At: diag.Place{Source: src}, Message: strings.TrimPrefix(err.Error(), "toml: ")}
	var parse toml.ParseError
	if errors.As(err, &parse) {
		f.Message = parse.Message
		f.At.Span = diag.Span{Start: parse.Position.Start, End: parse.Position.Start + max(1, parse.Position.Len)}
		if parse.LastKey != "" {
			f.Message = fmt.Sprintf("%s: %s", parse.LastKey, parse.Message)
			f.Path = parse.LastKey
		}
	}
	f.Hint = syntaxHint(src, f.At, f.Message)
	if head, _, large := strings.Cut(f.Message, " is out of range for "); large {
		f.Message = head + " is more than fixslate counts with"
		f.Hint = "write a number of at most a million"
	}
	if strings.Contains(f.Message, "already been defined") || strings.Contains(f.Message, "already created") {
		name := parse.LastKey
		if _, rest, quoted := strings.Cut(parse.Message, "'"); name == "" && quoted {
			name, _, _ = strings.Cut(rest, "'")
		}
		f.Message = fmt.Sprintf("[%s] stands twice", name)
		f.Hint = oneHeader
		if strings.HasPrefix(src.Line(f.At.Position().Line), "[[") {
			f.Message = fmt.Sprintf("[[%s]] stands beside a list %s = [...]", name, name)
			f.Hint = "write all entries in the one way or in the other"
		}
	}
	return f
}

// readUsed reads the tables that videos may share.
func (r *reader) readUsed(top *element, values map[string]any, p *Plan, only []string) {
	for i := range planTable.keys {
		k := &planTable.keys[i]
		value, written := values[k.Name]
		if !written {
			continue
		}
		if !slices.Contains(only, k.Name) {
			r.faultKey("key-unknown", k.Name, "move it into the plan; a used file holds "+quoted(only[1:]), "%q does not belong in a used file", k.Name)
			continue
		}
		if inner, ok := k.into(p).(part); ok {
			inner.read(r, top, k.Name, value)
		} else {
			r.value(target{&k.Key, k.into(p), top}, value)
		}
	}
	for name := range values {
		if !planTable.has(name) {
			r.unknownKey("", only, top, name, values[name])
		}
	}
	if shoot, ok := values["shoot"].(map[string]any); ok {
		for name := range shoot {
			if name != "gear" && shootTable.has(name) {
				r.faultKey("key-unknown", "shoot."+name, "move it into the plan", "a used file shares only the gear of [shoot], not %q", name)
			}
		}
	}
}

// unknownKey says where a key that does not belong here would.
func (r *reader) unknownKey(name string, known []string, at *element, written string, value any) {
	path := join(at.path, written)
	where := "at the top of the file"
	if name != "" {
		where = "in [" + name + "]"
	}
	message := fmt.Sprintf("%q is no key %s", written, where)
	hint := "the keys here are " + quoted(known)
	if len(known) > 14 {
		hint = "the README lists the keys, and fixslate schema prints them for editors"
	}
	outer, lower := at.parent, strings.ToLower(written)
	longer := slices.IndexFunc(known, func(k string) bool { return len(written) > 1 && strings.HasPrefix(k, written) })
	rows, noList := asRows(value)
	switch {
	case name != "" && planTable.has(written) && !noList && len(rows) > 0 && isTable(rows[0]): // tool = [{…}] in a step, whose key is "tools"
		message, hint = ownTable(written, where)
	case longer >= 0: // "do" in a cue, whose key is "does"
		hint = fmt.Sprintf("did you mean %q", known[longer])
	case outer != nil && outer.kind == KindStep && stepTable.has(lower) && !slices.Contains(known, lower):
		message = fmt.Sprintf("%q is a step's key", lower)
		hint = fmt.Sprintf("move it above [[%s]]", name)
		message += "; " + hint
		hint = "keys after a header belong to that header"
	case outer != nil && outer.kind == KindTest && testTable.has(lower) && !slices.Contains(known, lower):
		message = fmt.Sprintf("%q is a test's key; move it above [[%s]]", lower, name)
		hint = "keys after a header belong to that header"
	case name == "step" && shotTable.has(written): // setup, size, takes
		message = fmt.Sprintf("%q is a shot's key", written)
		hint = "put it under a [[step.shot]] of this step, behind the step's own keys"
	case name != "" && planTable.has(written):
		message, hint = ownTable(written, where)
	default:
		if near, ok := otherWord(written, known); ok {
			hint = fmt.Sprintf("did you mean %q", near)
		}
	}
	r.faultKey("key-unknown", path, hint, "%s", message)
}

func ownTable(name, where string) (message, hint string) {
	return fmt.Sprintf("%q is a table of its own, not a key %s", name, where), "move it above the first [header], or write [[" + name + "]]"
}

func isTable(value any) bool {
	_, ok := value.(map[string]any)
	return ok
}

func (r *reader) missingKey(name string, at *element, k *Key) {
	switch {
	case at.path == "" && k.Name == "step":
		r.fault("key-missing", k.Name, "add [[step]] with title and say", "the plan has no step")
	case at.path == "":
		r.fault("key-missing", "", "add [video] with title = \"…\"", "the plan has no [%s]", k.Name)
	default:
		r.faultKey("key-missing", at.path, fmt.Sprintf("add %s = %s", k.Name, k.Example), "[%s] needs %s (%s)", name, k.Name, k.Doc)
	}
}

// defaults fills what holds where nothing is written.
func (d *decoder) defaults() {
	p := d.plan
	if p.Version = cmp.Or(p.Version, 1); p.Version != 1 {
		d.fault("version-unknown", "plan", "write plan = 1, or use a newer fixslate", "this fixslate reads version 1 of the plan language, not %d", p.Version)
	}
	p.Video.Language = cmp.Or(p.Video.Language, "en")
	p.Voice.Narrated = cmp.Or(p.Voice.Narrated, Live)
	p.Captions.Profile = cmp.Or(p.Captions.Profile, "broadcast")
	p.Captions.Sounds = cmp.Or(p.Captions.Sounds, "brackets")
	p.Voice.WPM = cmp.Or(p.Voice.WPM, 157)
	p.Publish.FPS = cmp.Or(p.Publish.FPS, 25)
	p.Publish.TitleMax = cmp.Or(p.Publish.TitleMax, 100)
	p.Publish.DescriptionMax = cmp.Or(p.Publish.DescriptionMax, 5000)
	p.Publish.ChaptersMin = cmp.Or(p.Publish.ChaptersMin, 3)
	setDuration(&p.Publish.ChapterShortest, "10s")
	if !p.Shoot.Start.Set {
		p.Shoot.Start = Clock{9 * 60, true}
	}
	c := &p.Shoot.Change
	for field, value := range map[*Duration]string{&c.Place: "12m", &c.View: "4m", &c.Lens: "3m", &c.Light: "5m", &c.State: "10m", &c.Helper: "5m"} {
		setDuration(field, value)
	}
}

func setDuration(v *Duration, text string) {
	if !v.Set {
		*v, _ = ParseDuration(text) // constants of ours
	}
}
