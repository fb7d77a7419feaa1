package main

import (
	"context"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
)

// TestClosedWhileTyping closes the tab right after a key, before the program has had time for it: what
// was typed is there when the page is opened again.
func TestClosedWhileTyping(t *testing.T) {
	b := open(t, 1280, 800)
	if b == nil {
		return
	}
	var kept string // before the program can have answered
	b.run(chromedp.Focus(blank("item.0.name"), chromedp.ByQuery), chromedp.Evaluate(`document.activeElement.select()`, nil),
		chromedp.Evaluate(`(() => { const f = document.activeElement; f.value = "garden seat"; f.dispatchEvent(new Event("input")); return JSON.stringify(localStorage); })()`, &kept))
	if !strings.Contains(kept, "garden seat") {
		t.Errorf("kept while the program works: %s", kept)
	}
	if err := target.CloseTarget(chromedp.FromContext(b.ctx).Target.TargetID).Do(ofBrowser()); err != nil {
		t.Fatal(err)
	}
	again := openIn(t, b.of, 1280, 800)
	again.until(`document.querySelector('` + blank("item.0.name") + `').value === "garden seat" && document.getElementById("text").value.includes("garden seat")`)

	// It can be forgotten.
	again.press("Forget it")
	again.until(`localStorage.length === 0`)
	once := openIn(t, b.of, 1280, 800)
	once.until(`document.querySelector('` + blank("item.0.name") + `').value === "floor cushion"`)
}

// TestNothingKept: where the browser keeps nothing, as in a private window, all works and it is said.
func TestNothingKept(t *testing.T) {
	refuse := chromedp.ActionFunc(func(ctx context.Context) error {
		_, err := page.AddScriptToEvaluateOnNewDocument(`
			Object.defineProperty(window, "localStorage", { get() { throw new DOMException("refused", "SecurityError"); } });
			Object.defineProperty(window, "indexedDB", { get() { throw new DOMException("refused", "SecurityError"); } });`).Do(ctx)
		return err
	})
	b := open(t, 1280, 800, refuse)
	if b == nil {
		return
	}
	b.fill("item.0.size", "60 x 50 cm")
	b.until(`document.querySelector(".answer").innerText.startsWith("24 prints")`)
	b.until(`document.getElementById("kept").textContent.includes("keeps nothing")`)
}
