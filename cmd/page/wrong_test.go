package main

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestWrongValues: a value that cannot be says so right there, in the words of the command, tied to its
// blank and announced; the cloth stays as it was last, and all is well again once it is mended.
func TestWrongValues(t *testing.T) {
	b := open(t, 1280, 800)
	if b == nil {
		return
	}
	tied := func(path, words string) {
		t.Helper()
		b.until(`document.querySelector('` + blank(path) + `[aria-invalid=true]')`)
		b.settled()
		said := get[string](b, `document.getElementById(document.querySelector('`+blank(path)+`').getAttribute("aria-describedby")).textContent`)
		if !strings.Contains(said, words) {
			t.Errorf("%s: %q does not say %q", path, said, words)
		}
		b.until(`document.getElementById("alarm").textContent.includes("Not yet")`)
		if !get[bool](b, `document.querySelector(".cloth").classList.contains("stale") && Boolean(document.querySelector(".picture").shadowRoot.querySelector("path"))`) {
			t.Errorf("%s: the last good picture is not there, dimmed", path)
		}
		if !get[bool](b, `[...document.querySelectorAll("button")].find((b) => b.textContent === "Make the PDF").disabled`) {
			t.Errorf("%s: papers could be made", path)
		}
	}
	well := func() {
		t.Helper()
		b.until(`!document.querySelector("[aria-invalid]") && !document.querySelector(".cloth.stale") && !document.querySelector(".wrong")`)
	}
	b.fill("item.0.size", "50 x 50")
	tied("item.0.size", "unit")
	b.fill("item.0.size", "50 x 50 cm")
	well()
	b.fill("item.0.border", "5 mm") // below the hem
	tied("item.0.border", "hem")
	b.fill("item.0.border", "25 mm")
	well()
	b.fill("block.0.print", "2 m x 2 m")
	b.until(`document.querySelector(".cloth.stale .not-yet") || document.querySelector(".cloth.stale")`)
	b.fill("block.0.print", "90 x 90 mm")
	well()

	// In the text a message stands at its line, and a press leads there.
	b.run(chromedp.Evaluate(`(() => { const t = document.getElementById("text"); t.value = t.value.replace("gap =", "gapp ="); t.dispatchEvent(new Event("input")); })()`, nil))
	b.until(`document.querySelector(".messages li")?.textContent.includes("gapp")`)
	b.run(chromedp.Click(`.messages li button`, chromedp.ByQuery))
	if got := get[string](b, `(() => { const t = document.getElementById("text"); return t.value.slice(t.selectionStart, t.selectionEnd); })()`); !strings.Contains(got, "gapp") {
		t.Errorf("a press on the message marks %q", got)
	}
	b.run(chromedp.Evaluate(`(() => { const t = document.getElementById("text"); t.value = t.value.replace("gapp =", "gap ="); t.dispatchEvent(new Event("input")); })()`, nil))
	well()
}

// TestWhatWouldDo: a press on one of the ways to one print more puts it into the job.
func TestWhatWouldDo(t *testing.T) {
	b := open(t, 1280, 800)
	if b == nil {
		return
	}
	b.run(chromedp.Click(`.more .ask`, chromedp.ByQuery))
	b.until(`document.querySelector(".answer").innerText.startsWith("20 prints, 5 across and 4 down")`)
	if text := b.text(); !strings.Contains(text, `"50.4 x 50 cm"`) {
		t.Errorf("not 4 mm more cloth:\n%s", text)
	}
	b.press("Take back")
	b.until(`document.querySelector(".answer").innerText.startsWith("16 prints")`)
}
