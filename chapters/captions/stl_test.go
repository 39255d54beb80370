package captions

import (
	"bytes"
	"encoding/binary"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// stlFile makes an EBU STL file by Tech 3264: one subtitle for each text, a
// second apart, at 25 frames a second from 10:00:00:00.
func stlFile(display byte, texts ...string) []byte {
	h := bytes.Repeat([]byte{' '}, 1024)
	copy(h, "850STL25.01")
	h[11] = display
	copy(h[12:], "0009")
	copy(h[224:], "260101260101")
	copy(h[256:], "10000000")
	for i, text := range texts {
		chunks := []string{text}
		if len(text) > 112 {
			chunks = []string{text[:112], text[112:]}
		}
		for n, chunk := range chunks {
			b := bytes.Repeat([]byte{0x8f}, 128)
			b[0] = 0
			binary.LittleEndian.PutUint16(b[1:], uint16(i))
			b[3] = byte(n)
			if n == len(chunks)-1 {
				b[3] = 0xff
			}
			b[4], b[13], b[14], b[15] = 0, 20, 2, 0
			copy(b[5:], []byte{10, 0, byte(i), 5, 10, 0, byte(i), 20})
			copy(b[16:], chunk)
			h = append(h, b...)
		}
	}
	return h
}

// TestReadSTL reads files made by EBU Tech 3264: text in boxes and without,
// letters with accents (table 00: the accent comes first), a subtitle of two
// blocks, a comment, a maker's block.
func TestReadSTL(t *testing.T) {
	long := strings.Repeat("word ", 22) + "spl" + "it and done"
	raw := stlFile('1', "\x0d\x0b\x0bCaf\xc2e\x8a\x8atwo\x0a\x0a", "plain\x80italic\x81 text", long)
	comment := bytes.Clone(raw[1024:1152])
	comment[15] = 1
	user := bytes.Clone(raw[1024:1152])
	user[3] = 0xfe
	raw = append(raw, append(comment, user...)...)
	f, found := Read(raw, "a.stl")
	want := "200ms 800ms \"Café\\ntwo\"\n1.2s 1.8s \"plainitalic text\"\n2.2s 2.8s \"" + long + "\"\n"
	if diff := cmp.Diff(want, cueLines(f)); diff != "" || !f.Whole {
		t.Errorf("whole %v, %v\n%s", f.Whole, found, diff)
	}
	bad := bytes.Clone(raw)
	bad[1024+8] = 25 // frames run to 24
	if f, found := Read(bad, "a.stl"); f.Whole || len(f.Cues) != 2 {
		t.Errorf("frame 25: %d cues, %v", len(f.Cues), found)
	}
	if f, found := Read(raw[:len(raw)-300], "a.stl"); f.Whole {
		t.Errorf("truncated: %d cues, %v", len(f.Cues), found)
	}
	for _, code := range []string{"STL25.0x", "STL99.01"} {
		bad := bytes.Clone(raw)
		copy(bad[3:], code)
		if f, _ := Read(bad, "a.stl"); f.Whole {
			t.Errorf("format code %s is taken", code)
		}
	}
}
