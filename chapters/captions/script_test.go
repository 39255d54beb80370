package captions

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode"
)

// script runs the small part of JavaScript in which the W3C's tests state what
// they expect: var, for, assignments, calls, function literals, arrays. It
// stops the test at anything else, so that no assertion is passed over.
type script struct {
	t       *testing.T
	tokens  []string
	at      int
	vars    map[string]any
	dry     bool // reading a function's body without running it
	checked int  // assertions that ran
}

type (
	builtin  func(args []any) any
	function struct {
		params []string
		body   int // index of the token after "{"
	}
	object map[string]any
)

func newScript(t *testing.T, source string, vars map[string]any) *script {
	s := &script{t: t, tokens: scriptTokens(t, source), vars: vars}
	check := func(ok bool, format string, args ...any) any {
		s.checked++
		if !ok {
			t.Errorf(format, args...)
		}
		return nil
	}
	vars["assert_equals"] = builtin(func(a []any) any { return check(sameValue(a[0], a[1]), "got %v, want %v %v", a[0], a[1], a[2:]) })
	vars["assert_not_equals"] = builtin(func(a []any) any { return check(!sameValue(a[0], a[1]), "both are %v", a[0]) })
	vars["assert_true"] = builtin(func(a []any) any { return check(a[0] == true, "%v is not true %v", a[0], a[1:]) })
	vars["assert_false"] = builtin(func(a []any) any { return check(a[0] == false, "%v is not false %v", a[0], a[1:]) })
	vars["Number"] = object{"MAX_VALUE": math.MaxFloat64, "MIN_VALUE": math.SmallestNonzeroFloat64}
	vars["Array"] = object{"from": builtin(func(a []any) any { return a[0] })}
	vars["null"], vars["true"], vars["false"] = nil, true, false
	return s
}

func sameValue(a, b any) bool {
	x, isX := a.(float64)
	y, isY := b.(float64)
	if isX && isY {
		return x == y && math.Signbit(x) == math.Signbit(y)
	}
	return a == b
}

func scriptTokens(t *testing.T, source string) (tokens []string) {
	for i := 0; i < len(source); {
		c := rune(source[i])
		start := i
		switch {
		case unicode.IsSpace(c):
			i++
			continue
		case strings.HasPrefix(source[i:], "//"):
			for i < len(source) && source[i] != '\n' {
				i++
			}
			continue
		case c == '\'' || c == '"':
			for i++; rune(source[i]) != c; i++ {
				if source[i] == '\\' {
					i++
				}
			}
			i++
		case unicode.IsLetter(c) || c == '_':
			for i < len(source) && (unicode.IsLetter(rune(source[i])) || unicode.IsDigit(rune(source[i])) || source[i] == '_') {
				i++
			}
		case unicode.IsDigit(c):
			for i < len(source) && (isDigit(source[i]) || source[i] == '.') {
				i++
			}
		case strings.HasPrefix(source[i:], "++"):
			i += 2
		default:
			i++
		}
		tokens = append(tokens, source[start:i])
	}
	return tokens
}

func (s *script) peek() string {
	if s.at < len(s.tokens) {
		return s.tokens[s.at]
	}
	return ""
}

func (s *script) next() string { s.at++; return s.tokens[s.at-1] }

func (s *script) want(token string) {
	if got := s.next(); got != token {
		s.t.Fatalf("script: %q where %q is due, after %q", got, token, s.tokens[max(0, s.at-6):s.at])
	}
}

func (s *script) run() {
	for s.at < len(s.tokens) {
		s.statement()
	}
}

func (s *script) statement() {
	switch s.peek() {
	case "var":
		s.next()
		name := s.next()
		s.want("=")
		s.set(name, s.expression())
		s.want(";")
	case "for":
		s.forLoop()
	default:
		s.expression()
		if s.peek() == ";" {
			s.next()
		}
	}
}

func (s *script) set(name string, value any) {
	if !s.dry {
		s.vars[name] = value
	}
}

func (s *script) block() {
	s.want("{")
	for s.peek() != "}" {
		s.statement()
	}
	s.want("}")
}

func (s *script) forLoop() {
	s.want("for")
	s.want("(")
	s.statement() // var i = 0;
	test := s.at
	for {
		s.at = test
		goOn := s.expression()
		s.want(";")
		name := s.next()
		s.want("++")
		s.want(")")
		was := s.dry
		s.dry = s.dry || goOn != true
		s.block()
		s.dry = was
		if s.dry || goOn != true {
			return
		}
		s.set(name, s.vars[name].(float64)+1)
	}
}

func (s *script) expression() any {
	left := s.sum()
	if s.peek() == "<" {
		s.next()
		right := s.sum()
		if s.dry {
			return nil
		}
		return left.(float64) < right.(float64)
	}
	return left
}

func (s *script) sum() any {
	left := s.product()
	for s.peek() == "+" {
		s.next()
		right := s.product()
		a, isA := left.(float64)
		b, isB := right.(float64)
		if isA && isB {
			left = a + b
		} else {
			left = fmt.Sprint(left) + fmt.Sprint(right)
		}
	}
	return left
}

func (s *script) product() any {
	left := s.unary()
	for s.peek() == "*" {
		s.next()
		left = left.(float64) * s.unary().(float64)
	}
	return left
}

func (s *script) unary() any {
	switch s.peek() {
	case "!":
		s.next()
		return !truthy(s.unary())
	case "-":
		s.next()
		return -s.unary().(float64)
	}
	return s.postfix(s.primary())
}

func truthy(v any) bool {
	switch v := v.(type) {
	case nil:
		return false
	case bool:
		return v
	case *vttRegion:
		return v != nil
	}
	return true
}

func (s *script) primary() any {
	token := s.next()
	switch {
	case token == "[":
		var list []any
		for s.peek() != "]" {
			list = append(list, s.expression())
			if s.peek() == "," {
				s.next()
			}
		}
		s.want("]")
		return list
	case token == "function":
		f := function{}
		s.want("(")
		for s.peek() != ")" {
			if name := s.next(); name != "," {
				f.params = append(f.params, name)
			}
		}
		s.want(")")
		f.body = s.at
		was := s.dry
		s.dry = true
		s.body()
		s.dry = was
		return f
	case isDigit(token[0]):
		n, _ := strconv.ParseFloat(token, 64)
		return n
	case token[0] == '\'' || token[0] == '"':
		text, err := strconv.Unquote(`"` + token[1:len(token)-1] + `"`)
		if err != nil {
			s.t.Fatalf("script: string %s: %v", token, err)
		}
		return text
	case isLetter(token[0]) || token[0] == '_':
		v, ok := s.vars[token]
		if !ok && !s.dry {
			s.t.Fatalf("script: %s is not known", token)
		}
		return v
	}
	s.t.Fatalf("script: %q is not understood", token)
	return nil
}

// body runs a function's body and gives what it returns.
func (s *script) body() (result any) {
	s.want("{")
	for s.peek() != "}" {
		if s.peek() == "return" {
			s.next()
			result = s.expression()
			s.want(";")
			continue
		}
		s.statement()
	}
	s.want("}")
	return result
}

func (s *script) call(f function, args ...any) any {
	back := s.at
	for i, name := range f.params {
		s.vars[name] = args[i]
	}
	s.at = f.body
	result := s.body()
	s.at = back
	return result
}

func (s *script) postfix(v any) any {
	for {
		switch s.peek() {
		case ".":
			s.next()
			v = s.member(v, s.next())
		case "[":
			s.next()
			i := s.expression()
			s.want("]")
			if !s.dry {
				list := v.([]any)
				if int(i.(float64)) >= len(list) {
					s.t.Fatalf("script: index %v of %d", i, len(list))
				}
				v = list[int(i.(float64))]
			}
		case "(":
			s.next()
			var args []any
			for s.peek() != ")" {
				args = append(args, s.expression())
				if s.peek() == "," {
					s.next()
				}
			}
			s.want(")")
			if !s.dry {
				v = v.(builtin)(args)
			}
		default:
			return v
		}
	}
}

func (s *script) member(v any, name string) any {
	if s.dry {
		return nil
	}
	switch v := v.(type) {
	case object:
		if m, ok := v[name]; ok {
			return m
		}
	case *vttRegion:
		switch name {
		case "lines":
			return v.lines
		case "scroll":
			return v.scroll
		case "regionAnchorX":
			return v.anchor[0]
		case "regionAnchorY":
			return v.anchor[1]
		case "viewportAnchorX":
			return v.viewport[0]
		case "viewportAnchorY":
			return v.viewport[1]
		}
	case []any:
		each := builtin(func(args []any) any {
			var out []any
			f := args[0].(function)
			for i, element := range v {
				out = append(out, s.call(f, []any{element, float64(i)}[:len(f.params)]...))
			}
			return out
		})
		switch name {
		case "length":
			return float64(len(v))
		case "forEach", "map":
			return each
		}
	}
	s.t.Fatalf("script: %T has no %s", v, name)
	return nil
}
