package main

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

const dragged = `title = "Bag"
[[block]]
name = "pebble"
shape = "round"
print = "28 mm"
[[item]]
name = "bag"
size = "400 x 400 mm"
border = "20 mm"
  [[item.keep-clear]]
  name = "pocket"
  at = "100 x 100 mm"
  size = "80 x 60 mm"
  [[item.pass]]
  block = "pebble"
  repeat = "placed"
  at = ["300 x 300 mm", "60 x 320 mm turned 30"]
`

// write puts a job into the text, as if pasted.
func (b *tab) write(text string) {
	b.t.Helper()
	b.run(chromedp.Evaluate(fmt.Sprintf(`(() => { const t = document.getElementById("text"); t.value = %q; t.dispatchEvent(new Event("input")); })()`, text), nil))
}

// TestDragged moves a zone and placed prints by mouse, finger and arrow keys; the text follows.
func TestDragged(t *testing.T) {
	for _, size := range [][2]int64{{1280, 800}, {360, 740}} {
		b := open(t, size[0], size[1])
		if b == nil {
			return
		}
		b.write(dragged)
		b.until(`document.querySelectorAll(".handle").length === 3`)
		b.run(chromedp.ScrollIntoView(".handle", chromedp.ByQuery))
		// 30 mm to the right and 20 mm down, by mouse.
		mm := get[float64](b, `document.querySelector(".over").getBoundingClientRect().width`) / get[float64](b, `document.querySelector(".over").getBoundingClientRect().width / (document.querySelector(".handle").getBoundingClientRect().width / 80)`)
		type spot struct{ X, Y float64 }
		middle := func(n int) spot {
			return get[spot](b, fmt.Sprintf(`(() => { const r = document.querySelectorAll(".handle")[%d].getBoundingClientRect(); return {X: r.x + r.width / 2, Y: r.y + r.height / 2}; })()`, n))
		}
		m := middle(0)
		b.run(
			chromedp.MouseEvent(input.MousePressed, m.X, m.Y, chromedp.ButtonLeft),
			chromedp.MouseEvent(input.MouseMoved, m.X+15*mm, m.Y+10*mm, chromedp.ButtonLeft),
			chromedp.MouseEvent(input.MouseMoved, m.X+30*mm, m.Y+20*mm, chromedp.ButtonLeft),
			chromedp.MouseEvent(input.MouseReleased, m.X+30*mm, m.Y+20*mm, chromedp.ButtonLeft))
		b.until(`document.getElementById("text").value.includes('at = "130 x 120 mm"')`)
		// A print 40 mm to the left, by finger.
		m = middle(1)
		touch := func(kind input.TouchType, x, y float64) chromedp.Action {
			var points []*input.TouchPoint
			if kind != input.TouchEnd {
				points = []*input.TouchPoint{{X: x, Y: y}}
			}
			return input.DispatchTouchEvent(kind, points)
		}
		b.run(touch(input.TouchStart, m.X, m.Y), touch(input.TouchMove, m.X-20*mm, m.Y), touch(input.TouchMove, m.X-40*mm, m.Y), touch(input.TouchEnd, 0, 0))
		b.until(`document.getElementById("text").value.includes('"260 x 300 mm"')`)
		// A turned one by the keys: 10 mm up, 2 mm to the right.
		b.run(chromedp.Evaluate(`document.querySelectorAll(".handle")[2].focus()`, nil), chromedp.KeyEvent(kb.ArrowUp, chromedp.KeyModifiers(input.ModifierShift)), chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight))
		b.until(`document.getElementById("text").value.includes('"62 x 310 mm turned 30"')`)
		if got := get[string](b, `document.getElementById("live").textContent`); !strings.Contains(got, "62 mm from the left, 310 mm from the top") {
			t.Errorf("announced: %q", got)
		}
		if got := get[string](b, `document.activeElement.className`); !strings.Contains(got, "handle") {
			t.Errorf("the keys are with %q after moving", got)
		}
	}
}
