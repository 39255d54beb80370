package book

import (
	"bytes"
	"html/template"
	"io"
	"os"
	"testing"

	"fixslate/samples"
	"fixslate/templates/press"
)

// functions are what the page's templates call.
var functions = template.FuncMap{"css": css, "js": js, "policy": policy, "legend": legend, "lanes": lanes, "note": note}

// asTemplate is the page as html/template has it.
func asTemplate(t testing.TB) *template.Template {
	t.Helper()
	book := template.New("book").Funcs(functions)
	for _, name := range []string{"step.html.tmpl", "day.html.tmpl", "page.html.tmpl"} {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		template.Must(book.Parse(string(text)))
	}
	return book
}

// page.go is what press makes of the templates. FIXSLATE_UPDATE=1 writes it anew.
func TestPageIsMadeOfItsTemplates(t *testing.T) {
	book := asTemplate(t)
	if err := book.Execute(io.Discard, &view{}); err != nil { // that escapes its trees
		t.Fatal(err)
	}
	tree := func(name string, on any) press.Template {
		return press.Template{Tree: book.Lookup(name).Tree, On: on}
	}
	code, err := press.Make("book", []press.Template{tree("book", view{}), tree("caution", caution{}), tree("day", day{}), tree("step", step{})}, functions)
	if err != nil {
		t.Fatal(err)
	}
	if os.Getenv("FIXSLATE_UPDATE") != "" {
		if err := os.WriteFile("page.go", code, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if kept, err := os.ReadFile("page.go"); err != nil || !bytes.Equal(kept, code) {
		t.Fatal("page.go is not what the templates say; go generate ./templates/book writes it anew")
	}
}

// The page is byte for byte what html/template writes.
func TestPageIsThatOfItsTemplates(t *testing.T) {
	book := asTemplate(t)
	for _, name := range samples.Names() {
		for _, spoil := range []string{"", "<b>\"+'&\x00 é</b>"} {
			b := sample(t, name)
			for i := range b.Plan.Steps {
				s := &b.Plan.Steps[i]
				s.Title.Print += spoil
				s.Do.Print += spoil
				s.ID += spoil
			}
			b.Plan.Video.Title.Print += spoil
			var want bytes.Buffer
			if err := book.Execute(&want, viewOf(b)); err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(Page(b), visible(want.Bytes())) {
				t.Errorf("%s, spoilt by %q: the page is another than the template's", name, spoil)
			}
		}
	}
}
