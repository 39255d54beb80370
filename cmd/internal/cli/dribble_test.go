package cli

import (
	"bytes"
	"context"
	"io"
	"strings"
	"testing"
	"testing/iotest"
)

// A pipe that gives one byte at a time, or half of what is asked, or its last
// bytes together with its end, is read as a file is.
func TestStandardInputInPieces(t *testing.T) {
	const captions = "WEBVTT\r\n\r\n00:01.000 --> 00:02.000\r\nna\u00efve\r\nwords\r\n\r\n00:03.000 --> 00:04.000\r\nmore"
	read := func(in io.Reader) string {
		var out, complaints bytes.Buffer
		code := run(context.Background(), streams{in: in, out: &out, err: &complaints}, []string{"captions", "-", "--to", "srt"})
		if code != exitFine {
			t.Fatalf("exit %d: %s", code, complaints.String())
		}
		return out.String()
	}
	whole := read(strings.NewReader(captions))
	if !strings.Contains(whole, "na\u00efve\nwords") {
		t.Fatalf("%q", whole)
	}
	for name, piecemeal := range map[string]func(io.Reader) io.Reader{"one byte": iotest.OneByteReader, "half": iotest.HalfReader, "end with data": iotest.DataErrReader} {
		if got := read(piecemeal(strings.NewReader(captions))); got != whole {
			t.Errorf("%s: %q, want %q", name, got, whole)
		}
	}
}
