package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// axe returns the script of axe-core, which holds a page against WCAG; "" where npm cannot bring it.
func axe(t *testing.T) string {
	const name = "axe-core-4.10.3"
	cache, err := os.UserCacheDir()
	if err != nil {
		t.Log("axe-core is not tried: ", err)
		return ""
	}
	dir := filepath.Join(cache, "underlay-tests")
	script := filepath.Join(dir, name, "package", "axe.min.js")
	if text, err := os.ReadFile(script); err == nil {
		return string(text)
	}
	if err := os.MkdirAll(filepath.Join(dir, name), 0o777); err != nil {
		t.Log("axe-core is not tried: ", err)
		return ""
	}
	for _, command := range [][]string{{"npm", "pack", "axe-core@4.10.3", "--pack-destination", dir}, {"tar", "xzf", filepath.Join(dir, name+".tgz"), "-C", filepath.Join(dir, name)}} {
		if said, err := exec.Command(command[0], command[1:]...).CombinedOutput(); err != nil {
			t.Logf("axe-core is not tried: %s: %v %s", command[0], err, said)
			return ""
		}
	}
	text, err := os.ReadFile(script)
	if err != nil {
		t.Log("axe-core is not tried: ", err)
	}
	return string(text)
}

// full is a job in which most sentences are there.
const full = `title = "Everything"
[[paint]]
name = "moss"
looks = "#5f7a3a"
[[block]]
name = "fern"
print = "60 x 60 mm"
wood = "66 x 66 mm"
inked = 0.5
[[block]]
name = "pebble"
shape = "round"
print = "28 mm"
[[item]]
name = "cushion"
size = "50 x 50 cm"
border = "25 mm"
hem = "12 mm"
quantity = 6
faces = ["front", "back"]
  [[item.keep-clear]]
  name = "pocket"
  at = "60 x 60 mm"
  size = "100 x 80 mm"
  face = "front"
  [[item.colourway]]
  name = "evening"
  quantity = 2
  swap = { moss = "teal" }
  [[item.pass]]
  name = "ferns"
  block = "fern"
  repeat = "brick"
  gap = "2 mm to 6 mm"
  colours = ["moss"]
  turns = ["0 180"]
  [[item.pass]]
  block = "pebble"
  repeat = "placed"
  at = ["250 x 250 mm"]
  over = true
[[item]]
name = "lamp"
shape = "drum"
diameter = "30 cm"
height = "20 cm"
border = "10 mm"
  [[item.pass]]
  block = "pebble"
  gap = "4 mm"
`

// TestNothingForAxe: axe-core finds nothing to say of the page, at any size and in any of its states.
func TestNothingForAxe(t *testing.T) {
	b := open(t, 1280, 800)
	if b == nil {
		return
	}
	script := axe(t)
	if script == "" {
		return
	}
	b.run(chromedp.Evaluate(script, nil))
	look := func(state string) {
		t.Helper()
		b.settled()
		for _, size := range [][2]int64{{1280, 800}, {768, 1024}, {360, 740}} {
			b.run(emulation.SetDeviceMetricsOverride(size[0], size[1], 1, size[0] < 600))
			b.settled()
			found := get[string](b, `axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}).then((r) => JSON.stringify(r.violations.map((v) => ({id: v.id, help: v.help, nodes: v.nodes.slice(0, 3).map((n) => n.html.slice(0, 200) + " " + n.failureSummary)}))))`)
			var all []struct {
				ID, Help string
				Nodes    []string
			}
			if err := json.Unmarshal([]byte(found), &all); err != nil {
				t.Fatal(err)
			}
			for _, v := range all {
				t.Errorf("%s, %d pixels: %s: %s\n%s", state, size[0], v.ID, v.Help, strings.Join(v.Nodes, "\n"))
			}
		}
	}
	look("first opened")
	b.write(full)
	look("everything")
	b.until(`!document.querySelector(".papers.stale")`)
	look("with papers")
	b.fill("item.0.size", "50 x 50")
	look("a wrong size")
	b.fill("item.0.size", "50 x 50 cm")
	b.settled()
	b.until(`!document.querySelector(".papers.stale")`)
	b.run(chromedp.Click(".page", chromedp.ByQuery))
	b.until(`document.querySelector("dialog.large[open] .picture")?.shadowRoot?.querySelector("path")`)
	look("a page seen large")
}

// TestSizes: at no size does anything need sideways scrolling, stand on anything else, or is too small
// to be met with a finger (WCAG 2.2, 1.4.10 and 2.5.8): a phone, 400 % zoom of 1280 pixels, letters
// twice as large, a tablet, a laptop.
func TestSizes(t *testing.T) {
	b := open(t, 1280, 800)
	if b == nil {
		return
	}
	b.write(full)
	b.settled()
	b.until(`!document.querySelector(".papers.stale")`)
	for _, s := range []struct {
		width, height int64
		letters       string
	}{{1280, 800, "100%"}, {768, 1024, "100%"}, {360, 740, "100%"}, {320, 256, "100%"}, {1280, 800, "200%"}, {360, 740, "200%"}} {
		b.run(emulation.SetDeviceMetricsOverride(s.width, s.height, 1, s.width < 600), chromedp.Evaluate(fmt.Sprintf(`document.documentElement.style.fontSize = %q`, s.letters), nil))
		b.settled()
		if w := get[int64](b, `document.documentElement.scrollWidth`); w > s.width {
			t.Errorf("at %d x %d, letters %s, the page is %d wide: %s", s.width, s.height, s.letters, w, get[string](b, fmt.Sprintf(`[...document.querySelectorAll("main *")].filter((e) => e.getBoundingClientRect().right > %d + 1 && !e.closest("textarea, pre, .unseen")).slice(0, 3).map((e) => e.outerHTML.slice(0, 120)).join("\n")`, s.width)))
		}
		small := get[string](b, `[...document.querySelectorAll("button, input, select, textarea, main a")].filter((e) => e.checkVisibility() && !e.closest(".unseen, dialog") && !e.matches(".unseen, .sentence .ask, .sentence .quiet, .more .ask, .sheets .ask")).filter((e) => { const r = e.getBoundingClientRect(); return r.width < 24 || r.height < 24; }).map((e) => e.outerHTML.slice(0, 120)).join("\n")`)
		if small != "" {
			t.Errorf("at %d x %d, letters %s, smaller than 24 pixels:\n%s", s.width, s.height, s.letters, small)
		}
	}
}

// TestKeyboardAlone goes through the page by the keyboard and does the whole job with it.
func TestKeyboardAlone(t *testing.T) {
	b := open(t, 1280, 800)
	if b == nil {
		return
	}
	// to presses Tab until what has the focus fits.
	to := func(what string) {
		t.Helper()
		for range 120 {
			b.run(chromedp.KeyEvent(kb.Tab))
			if get[bool](b, `(() => { const e = document.activeElement; return Boolean(`+what+`); })()`) {
				if !get[bool](b, `(() => { const r = document.activeElement.getBoundingClientRect(); return r.height > 0 && r.bottom > 0 && r.top < innerHeight; })()`) {
					t.Errorf("%s has the focus, and cannot be seen", what)
				}
				return
			}
		}
		t.Fatalf("no Tab leads to %s", what)
	}
	to(`e.dataset.path === "item.0.size"`)
	b.run(chromedp.KeyEvent("60 x 50 cm"))
	b.until(`document.querySelector(".answer").innerText.startsWith("24 prints")`)
	to(`e.dataset.path === "item.0.pass.0.repeat"`)
	b.run(chromedp.KeyEvent("b")) // brick
	b.settled()
	b.until(`document.getElementById("text").value.includes('repeat = "brick"')`)
	to(`e.textContent === "Make the PDF"`)
	b.until(`!document.querySelector(".papers.stale")`)
	b.run(chromedp.KeyEvent(kb.Enter))
	b.sameAsCommand(b.saved(get[string](b, `document.getElementById("papers").dataset.file`)+".pdf"), nil)
	to(`e.classList.contains("page")`)
	b.run(chromedp.KeyEvent(kb.Enter))
	b.until(`document.querySelector("dialog.large[open] .large-name")?.textContent.startsWith("Page 1 of")`)
	b.run(chromedp.KeyEvent(kb.Enter), chromedp.KeyEvent(kb.Enter))
	b.until(`document.querySelector(".large-name").textContent.startsWith("Page 3 of")`)
	b.run(chromedp.KeyEvent(kb.Escape))
	b.until(`!document.querySelector("dialog[open]")`)
	if !get[bool](b, `document.activeElement.classList.contains("page")`) {
		t.Error("after a page was seen large the focus is not where it was")
	}
	to(`e.id === "text"`)
}
