package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"
)

// command is the command underlay, built once.
var command struct {
	sync.Once
	name string
	err  error
}

// drawn returns the PDF that the command draws of a job that is saved under a name.
func drawn(t testing.TB, name, text string, beside map[string][]byte) []byte {
	t.Helper()
	command.Do(func() {
		command.name = filepath.Join(built.dir, "underlay")
		said, err := exec.Command("go", "build", "-o", command.name, "underlay/cmd/underlay").CombinedOutput()
		if command.err = err; err != nil {
			t.Errorf("%s", said)
		}
	})
	if command.err != nil {
		t.Fatal(command.err)
	}
	dir := t.TempDir()
	for file, data := range beside {
		if err := os.WriteFile(filepath.Join(dir, file), data, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, name+".toml"), []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	draw := exec.Command(command.name, "draw", name+".toml", "-o", name+".pdf")
	draw.Dir = dir
	if said, err := draw.CombinedOutput(); err != nil {
		t.Fatalf("underlay draw: %v\n%s", err, said)
	}
	pdf, err := os.ReadFile(filepath.Join(dir, name+".pdf"))
	if err != nil {
		t.Fatal(err)
	}
	return pdf
}

// sameAsCommand holds a PDF that the page made of the job it shows against the command's.
func (b *tab) sameAsCommand(pdf []byte, beside map[string][]byte) {
	b.t.Helper()
	name := get[string](b, `document.getElementById("papers").dataset.file`)
	if want := drawn(b.t, name, b.text(), beside); !bytes.Equal(pdf, want) {
		b.t.Errorf("the page's PDF of %d bytes is not the command's of %d", len(pdf), len(want))
	}
}

// TestFirstGuide is the way of someone who has never been here: the cushion is there, its sizes are
// changed, the papers are looked at, and the PDF is made, which is the command's byte for byte.
func TestFirstGuide(t *testing.T) {
	b := open(t, 1280, 800)
	if b == nil {
		return
	}
	if got := b.answer(); !strings.HasPrefix(got, "16 prints, 4 across and 4 down") {
		t.Errorf("the first cushion: %q", got)
	}
	b.fill("item.0.size", "60 x 50 cm")
	b.until(`document.querySelector(".answer").innerText.startsWith("24 prints, 6 across and 4 down")`)
	b.fill("item.0.border", "3 cm")
	b.until(`document.querySelector(".answer").innerText.startsWith("20 prints, 5 across and 4 down")`)
	if text := b.text(); !strings.Contains(text, `"60 x 50 cm"`) || !strings.Contains(text, `"3 cm"`) {
		t.Errorf("the text does not say so:\n%s", text)
	}
	b.until(`document.querySelectorAll(".page").length > 3 && !document.querySelector(".papers.stale")`)
	b.run(chromedp.Evaluate(`document.getElementById("papers").scrollIntoView()`, nil))
	b.until(`document.querySelector(".page .picture").shadowRoot?.querySelector("path")`)
	b.press("Make the PDF")
	b.sameAsCommand(b.saved(get[string](b, `document.getElementById("papers").dataset.file`)+".pdf"), nil)
}
