package main

import (
	"strings"
	"testing"
	"time"
)

// TestHostileJobs: jobs that are made to break a page are refused with a reason or shown as they are;
// the page lives, and takes the next job.
func TestHostileJobs(t *testing.T) {
	b := open(t, 1280, 800)
	if b == nil {
		return
	}
	first := b.text()
	const markup = `<img src=x onerror=alert(1)><script>alert(2)</script>`
	named := strings.NewReplacer(`"floor cushion"`, `'`+markup+`'`, `"fern"`, `'"><svg/onload=alert(3)>'`, `"moss"`, `'<b>moss</b>'`, `"Floor cushions"`, `'</title><script>alert(4)</script>'`).Replace(first)
	b.write(named)
	b.until(`!document.querySelector(".cloth.stale") && document.querySelector('[data-path="item.0.name"]').value.includes("<img")`)
	if n := get[int](b, `document.querySelectorAll("main img, main script, main b, main svg").length`); n > 0 {
		t.Errorf("%d elements came out of names", n)
	}
	if n := get[int](b, `[...document.querySelectorAll(".picture")].map((p) => p.shadowRoot?.querySelectorAll("img, script, b, foreignObject, [onload], [onerror]").length ?? 0).reduce((a, n) => a + n, 0)`); n > 0 {
		t.Errorf("%d elements came out of names in pictures", n)
	}
	b.until(`!document.querySelector(".papers.stale")`)

	for _, j := range []struct{ name, text, says string }{
		{"200,000 prints", strings.NewReplacer(`"50 x 50 cm"`, `"4.5 x 4.5 m"`, `"90 x 90 mm"`, `"9 x 9 mm"`, `wood = "98 x 98 mm"`, ``).Replace(first), ""},
		{"more prints than there may be", strings.NewReplacer(`"50 x 50 cm"`, `"45 x 45 m"`, `"90 x 90 mm"`, `"9 x 9 mm"`, `wood = "98 x 98 mm"`, ``).Replace(first), ""},
		{"1 MiB", first + strings.Repeat("# a remark that goes on and on\n", 1<<20/31), ""},
		{"no TOML", "[[[[", ""},
		{"nothing", "", ""},
		{"deep", "a = " + strings.Repeat("[", 20_000), ""},
		{"no text", "title = \"\x00\x01\"", ""},
	} {
		b.write(j.text)
		begun := time.Now()
		b.settled()
		t.Logf("%s: %v: %s", j.name, time.Since(begun).Round(10*time.Millisecond), b.answer())
		b.write(first)
		b.until(`document.querySelector(".answer").innerText.startsWith("16 prints, 4 across") && !document.querySelector(".cloth.stale")`)
	}
}
