package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// choose gives files to the file field that a selector finds.
func (b *tab) choose(selector string, files ...string) {
	b.t.Helper()
	for i, name := range files {
		whole, err := filepath.Abs(name)
		if err != nil {
			b.t.Fatal(err)
		}
		files[i] = whole
	}
	b.run(chromedp.QueryAfter(selector, func(ctx context.Context, _ runtime.ExecutionContextID, nodes ...*cdp.Node) error {
		return dom.SetFileInputFiles(files).WithNodeID(nodes[0].NodeID).Do(ctx)
	}, chromedp.ByQuery, chromedp.NodeReady))
}

// TestJobOpenedChangedKept opens a job that someone wrote by hand, changes it, and keeps it: all that
// was not changed stays as it was, the command draws it, and a PDF of it opens again.
func TestJobOpenedChangedKept(t *testing.T) {
	b := open(t, 1280, 800)
	if b == nil {
		return
	}
	const file = "../../examples/cushion-back.toml"
	before, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	b.choose(".begin input[type=file]", file)
	if wave, err := filepath.Glob("../../examples/*.png"); err == nil && len(wave) > 0 {
		b.choose(".begin input[type=file]", wave...)
	}
	b.until(`document.querySelector(".answer").innerText.includes("16 prints, 4 across and 4 down, 62.5 mm plain")`)
	b.fill("item.0.size", "52 x 52 cm")
	b.until(`document.querySelector(".answer").innerText.includes("25 prints, 5 across and 5 down")`)
	want := strings.Replace(string(before), `"500 x 500 mm"`, `"52 x 52 cm"`, 1)
	if want == string(before) {
		want = strings.Replace(string(before), `"50 x 50 cm"`, `"52 x 52 cm"`, 1)
	}
	b.press("Keep the job")
	kept := b.saved("cushion-back.toml")
	if string(kept) != want {
		t.Errorf("more than one value differs:\n%s", kept)
	}
	beside := map[string][]byte{}
	for _, name := range []string{"fern.png", "pebble.png"} {
		if data, err := os.ReadFile("../../examples/" + name); err == nil {
			beside[name] = data
		}
	}
	b.press("Make the PDF")
	pdf := b.saved("cushion-back.pdf")
	if !bytes.Equal(pdf, drawn(t, "cushion-back", string(kept), beside)) {
		t.Error("the page's PDF is not that of the command")
	}

	b.press("a towel")
	b.until(`document.querySelector(".title input").value.includes("owel")`)
	b.choose(".begin input[type=file]", filepath.Join(b.kept, "cushion-back.pdf"))
	b.until(`document.querySelector(".answer").innerText.includes("25 prints, 5 across and 5 down")`)
	if got := b.text(); got != want {
		t.Errorf("the job inside the PDF came back as\n%s", got)
	}
	b.press("Take back")
	b.until(`document.querySelector(".title input").value.includes("owel")`)

	// Dropped on the page; and what is neither job nor guide is refused.
	drop := func(name, text string) {
		b.run(chromedp.Evaluate(fmt.Sprintf(`(() => { const d = new DataTransfer(); d.items.add(new File([%q], %q)); dispatchEvent(new DragEvent("drop", {dataTransfer: d, cancelable: true})); })()`, text, name), nil))
	}
	drop("nook.toml", strings.Replace(want, "Floor cushion, back", "Dropped", 1))
	b.until(`document.querySelector(".title input").value === "Dropped"`)
	drop("nothing.toml", "")
	b.until(`document.querySelector(".begin .word:not([hidden])")?.textContent.includes("empty")`)
	if got := get[string](b, `document.querySelector(".title input").value`); got != "Dropped" {
		t.Errorf("an empty file took the place of the job: %q", got)
	}
}
