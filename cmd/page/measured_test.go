package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestMeasured takes a block's size and picture from a photograph of its print in the window, and gives
// another block a picture as it is; the PDF is that of the command with both pictures beside the job.
func TestMeasured(t *testing.T) {
	b := open(t, 1280, 800)
	if b == nil {
		return
	}
	b.press("a picture of its print")
	b.until(`document.querySelector(".picture-of input")`)
	b.choose(".picture-of input", "../../examples/fern-photo.jpg")
	b.until(`document.querySelector("dialog.ask-how[open]")`)
	b.press("Measure it in the window")
	b.until(`document.querySelector("dialog[open] img.traced")?.naturalWidth > 0`)
	b.press("Take it")
	b.until(`document.getElementById("text").value.includes('picture = "fern.png"')`)
	b.settled()
	if text := b.text(); strings.Contains(text, `print = "90 x 90 mm"`) || !strings.Contains(text, "inked = ") {
		t.Errorf("the block has not the size that was measured:\n%s", text)
	}
	b.press("Keep the job")
	traced := b.saved("fern.png")
	b.press("Make the PDF")
	name := get[string](b, `document.getElementById("papers").dataset.file`)
	b.sameAsCommand(b.saved(name+".pdf"), map[string][]byte{"fern.png": traced})

	// A drawing as it is, in place of it; the print keeps its size.
	b.choose(".picture-of input", "../../examples/wave.png")
	b.until(`document.querySelector("dialog.ask-how[open]")`)
	b.press("As it is")
	b.until(`document.getElementById("text").value.includes('picture = "wave.png"')`)
	b.settled()
	if got := b.answer(); strings.HasPrefix(got, "Not yet") {
		t.Errorf("with wave.png: %s", got)
	}

	// What is no picture is refused in plain words.
	junk := filepath.Join(t.TempDir(), "notes.png")
	if err := os.WriteFile(junk, []byte("not a picture"), 0o666); err != nil {
		t.Fatal(err)
	}
	b.choose(".picture-of input", junk)
	b.until(`document.querySelector("dialog.ask-how[open]")`)
	b.press("Measure it in the window")
	b.until(`document.querySelector(".begin .word:not([hidden])")?.textContent.includes("PNG")`)
}
