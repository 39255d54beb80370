package picture

import (
	"strings"
	"unicode"

	"fixslate/plan/diag"
	"fixslate/plan/prose"
)

// letter is the width of a character in ems, as DejaVu Sans has it, the widest
// of the faces that stand in for system-ui (measured by class, rounded up). A
// file can't ask how wide a letter is where it is opened.
func letter(r rune) float64 {
	if r >= 0 && int(r) < len(plainLetters) {
		return plainLetters[r]
	}
	return widthOf(r)
}

// plainLetters are the widths of the plain characters.
var plainLetters = func() (widths [128]float64) {
	for r := range widths {
		widths[r] = widthOf(rune(r))
	}
	return widths
}()

func widthOf(r rune) float64 {
	switch {
	case unicode.Is(unicode.M, r), unicode.Is(unicode.Cf, r):
		return 0
	case strings.ContainsRune("iljI.,:;'|!·", r):
		return 0.33
	case strings.ContainsRune("ftr()[]/\\- ", r):
		return 0.42
	case strings.ContainsRune("mwMW@%—…", r):
		return 1
	case r >= 0x1100 && wideRune(r):
		return 1.02
	case unicode.IsUpper(r), r == 'Ω':
		return 0.75
	}
	return 0.64
}

// wideRune holds for characters that take a square of their own (the blocks
// that Unicode Annex 11 calls wide; from memory, coarsely).
func wideRune(r rune) bool {
	return r <= 0x115f || 0x2e80 <= r && r <= 0xa4cf || 0xac00 <= r && r <= 0xd7a3 || 0xf900 <= r && r <= 0xfaff ||
		0xfe30 <= r && r <= 0xfe6f || 0xff00 <= r && r <= 0xff60 || r >= 0x1f000
}

// long is how wide text is at a size in pixels.
func long(text string, size float64) float64 { return further(0, text) * size }

// further is how far a text of some ems goes with more behind it.
func further(ems float64, text string) float64 {
	for _, r := range text {
		ems += letter(r)
	}
	return ems
}

// wrapped breaks text into lines of a width: at spaces, and inside a word that
// is wider than a line, but never before a letter's accent.
func wrapped(text string, size, width float64) []string {
	text = prose.SingleSpaces(diag.Visible(text)) // as it will stand there
	var lines []string
	from, to, ems := 0, 0, 0.0 // the line so far
	for next, end := 0, 0; next < len(text); next = end + 1 {
		word, _, _ := strings.Cut(text[next:], " ")
		end = next + len(word)
		if rest := text[end:]; rest == " %" || strings.HasPrefix(rest, " % ") {
			end += len(" %") // stands with its number
			word = text[next:end]
		}
		if from < to {
			if joined := further(further(ems, " "), word); joined*size <= width {
				to, ems = end, joined
				continue
			}
			lines = append(lines, text[from:to])
		}
		own := further(0, word)
		for own*size > width {
			head := within(word, size, width)
			if head == word {
				break
			}
			lines = append(lines, head)
			word = word[len(head):]
			own = further(0, word)
		}
		from, to, ems = end-len(word), end, own
	}
	if from < to {
		lines = append(lines, text[from:to])
	}
	return lines
}

// within is the longest head of a word that fits, at least one letter with its
// accents.
func within(word string, size, width float64) string {
	sum, first := 0.0, true
	for i, r := range word {
		w := letter(r) * size
		if !first && w > 0 && sum+w > width {
			return word[:i]
		}
		sum, first = sum+w, false
	}
	return word
}

// shortened cuts a label to a width, at a space where there is one near.
func shortened(label string, size, width float64) string {
	label = diag.Visible(label)
	if long(label, size) <= width {
		return label
	}
	room := width - long("…", size)
	if room < 2*size {
		return ""
	}
	head := within(label, size, room)
	if i := strings.LastIndexByte(head, ' '); i > len(head)-9 && i > 0 {
		head = head[:i]
	}
	return strings.TrimRight(head, " ") + "…"
}
