package plan

import (
	"testing"
	"underlay/template/internal/messages"
	"underlay/template/internal/oracle"
	"underlay/template/internal/sample"
	"underlay/template/jobfile"
)

// FuzzOutline plans blocks and items of any outline, in any repeat and turns: they are refused in
// plain words, or every print lies wholly inside the border, none on another, and each is turned
// as asked.
func FuzzOutline(f *testing.F) {
	f.Add([]byte{0, 0, 50, 10, 40, 60, 20, 25}, []byte{0, 0, 200, 0, 100, 250}, []byte{0, 2}, uint8(0))
	f.Add([]byte{0, 0, 30, 0, 30, 30, 0, 30}, []byte{0, 0, 200, 0, 200, 200, 0, 200}, []byte{0, 1, 3, 2}, uint8(6))
	f.Add([]byte{0, 0, 90, 0, 45, 80}, []byte{10, 0, 90, 0, 100, 90, 0, 90, 50, 40}, []byte{}, uint8(11))
	f.Fuzz(func(t *testing.T, block, item, turns []byte, choice uint8) {
		if len(block) > 24 || len(item) > 24 || len(turns) > 6 {
			return
		}
		text := sample.Outlined(block, item, turns, choice)
		j, err := jobfile.Read("nook.toml", []byte(text))
		if err != nil {
			messages.Check(t, "nook.toml", err)
			return
		}
		if !quick(j) {
			return
		}
		plan, err := New(j)
		if err != nil {
			messages.Check(t, "nook.toml", err)
			return
		}
		t.Log(text)
		ip := plan.Items[0]
		p := ip.Passes[0]
		oracle.CheckPlaces(t, ip.Item, p.Pass, placesOf(p))
		checkTurned(t, ip, p)
		checkField(t, ip.Item, p)
	})
}
