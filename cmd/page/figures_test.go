package main

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// BenchmarkPage measures what a maker waits for, in a browser: until the page is ready, from a letter
// typed to the new picture at 16, 100 and 2,000 prints, and until the PDF of the reading nook is there.
//
//	go test ./cmd/page -run xxx -bench Page -benchtime 1x
func BenchmarkPage(b *testing.B) {
	t := open(b, 1280, 800)
	if t == nil {
		return
	}
	for b.Loop() {
		least := time.Duration(1 << 62)
		for range 5 {
			begun := time.Now()
			t.run(chromedp.Navigate("file://"+built.page), chromedp.WaitReady("html[data-ready]", chromedp.ByQuery))
			least = min(least, time.Since(begun))
		}
		b.ReportMetric(float64(least.Milliseconds()), "ms-until-ready")
		first := t.text()
		for _, n := range []struct {
			prints           int
			block, cloth, to string
		}{{16, "90 x 90 mm", "50 x 50 cm", "51 x 50 cm"}, {100, "43 x 43 mm", "50 x 50 cm", "50.1 x 50 cm"}, {2025, "20 x 20 mm", "100 x 100 cm", "100.1 x 100 cm"}} {
			text := strings.NewReplacer(`"90 x 90 mm"`, `"`+n.block+`"`, `"50 x 50 cm"`, `"`+n.cloth+`"`).Replace(first)
			text = strings.Replace(text, `wood = "98 x 98 mm"`, "", 1)
			t.write(text)
			t.settled()
			if got := t.answer(); !strings.HasPrefix(strings.ReplaceAll(got, ",", ""), fmt.Sprint(n.prints, " prints")) {
				b.Fatalf("%d prints: %s", n.prints, got)
			}
			// From the letter to the frame after the new picture is in the page.
			const key = `new Promise((done) => {
				const host = document.querySelector(".picture").shadowRoot, f = document.querySelector('[data-path="item.0.size"]'), begun = performance.now();
				new MutationObserver((_, o) => { o.disconnect(); requestAnimationFrame(() => setTimeout(() => done(performance.now() - begun))); }).observe(host, {childList: true});
				f.value = %q;
				f.dispatchEvent(new Event("input"));
			})`
			ms := 1e9
			for i := range 10 {
				ms = min(ms, get[float64](t, fmt.Sprintf(key, []string{n.to, n.cloth}[i%2])))
			}
			b.ReportMetric(ms, fmt.Sprintf("ms-to-%d-prints", n.prints))
		}
		const examples = "../../examples/"
		t.choose(".begin input[type=file]", examples+"reading-nook.toml", examples+"fern.png", examples+"wave.png")
		t.until(`document.querySelector(".title input").value === "Reading nook" && !document.documentElement.dataset.busy && !document.querySelector(".cloth.stale")`)
		ms := 1e9
		for i := range 3 {
			// Of a job just changed, whose papers are not drawn yet.
			t.fill("title", fmt.Sprint("Reading nook ", i))
			t.settled()
			ms = min(ms, get[float64](t, `new Promise((done) => {
				const begun = performance.now(), anchor = HTMLAnchorElement.prototype;
				anchor.click = function () { done(performance.now() - begun); };
				[...document.querySelectorAll("button")].find((b) => b.textContent === "Make the PDF").click();
			})`))
			t.until(`!document.querySelector(".papers.stale")`)
		}
		b.ReportMetric(ms, "ms-to-the-nook's-PDF")
		if info, err := os.Stat(built.page); err == nil {
			b.ReportMetric(float64(info.Size())/1e6, "MB")
		}
	}
}

// TestSmall: the file goes into a mail without a thought.
func TestSmall(t *testing.T) {
	if open(t, 1280, 800) == nil {
		return
	}
	info, err := os.Stat(built.page)
	if err != nil {
		t.Fatal(err)
	}
	if info.Size() > 4_500_000 {
		t.Errorf("the page has %d bytes", info.Size())
	}
}
