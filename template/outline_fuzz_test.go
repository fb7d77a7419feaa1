package template

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"underlay/paper/pdf"
	"underlay/template/internal/messages"
	"underlay/template/internal/oracle"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/plan"
)

// FuzzOutline plans and draws blocks and items of any outline, in any repeat and turns: they
// are refused in plain words, or drawn; then every print lies wholly inside the border, none
// on another, and each is turned as asked.
func FuzzOutline(f *testing.F) {
	f.Add([]byte{0, 0, 50, 10, 40, 60, 20, 25}, []byte{0, 0, 200, 0, 100, 250}, []byte{0, 2}, uint8(0))
	f.Add([]byte{0, 0, 30, 0, 30, 30, 0, 30}, []byte{0, 0, 200, 0, 200, 200, 0, 200}, []byte{0, 1, 3, 2}, uint8(6))
	f.Add([]byte{0, 0, 90, 0, 45, 80}, []byte{10, 0, 90, 0, 100, 90, 0, 90, 50, 40}, []byte{}, uint8(11))
	f.Fuzz(func(t *testing.T, block, item, turns []byte, choice uint8) {
		if len(block) > 24 || len(item) > 24 || len(turns) > 6 {
			return
		}
		text := outlineText(block, item, turns, choice)
		j, err := jobfile.Read("nook.toml", []byte(text))
		if err != nil {
			messages.Check(t, "nook.toml", err)
			return
		}
		if !quick(j) {
			return
		}
		plan, err := plan.New(j)
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
		if len(p.Prints) > 500 {
			return
		}
		doc, _, err := Document(plan, UsualParts())
		if err == nil {
			err = pdf.Write(io.Discard, doc)
		}
		if problems := (job.Problems{}); err != nil && !errors.As(err, &problems) {
			t.Fatalf("%v\n%s", err, text)
		}
	})
}

// outlineText writes a job of a block and an item with the outlines and turns given by bytes.
func outlineText(block, item, turns []byte, choice uint8) string {
	repeats := []string{"straight", "brick", "half-drop", "honeycomb", "diagonal", "frame", "rings"}
	var text strings.Builder
	fmt.Fprintf(&text, "[paper]\nsize = 'A2'\n[[block]]\nname = 'leaf'\nshape = 'outline'\noutline = %s\n"+
		"[[item]]\nname = 'pennant'\nshape = 'outline'\noutline = %s\nborder = '%d mm'\n"+
		"[[item.pass]]\nblock = 'leaf'\ngap = '2 mm'\nrepeat = '%s'\n",
		points(block, 1), points(item, 4), choice/7%4*5, repeats[int(choice)%len(repeats)])
	if len(turns) > 0 {
		fmt.Fprintf(&text, "turns = %s\n", matrix(turns, int(choice)/28%3+1))
	}
	return text.String()
}

// points makes an outline of pairs of bytes, each so many millimetres.
func points(b []byte, scale int) string {
	var list []string
	for i := 0; i+1 < len(b); i += 2 {
		list = append(list, fmt.Sprintf("'%d x %d mm'", int(b[i])*scale, int(b[i+1])*scale))
	}
	return "[" + strings.Join(list, ", ") + "]"
}

// matrix makes rows, so wide, of quarter turns.
func matrix(b []byte, width int) string {
	var rows []string
	for len(b) > 0 {
		var row []string
		n := min(width, len(b))
		for _, q := range b[:n] {
			row = append(row, fmt.Sprint(int(q%4)*90))
		}
		rows, b = append(rows, "'"+strings.Join(row, " ")+"'"), b[n:]
	}
	return "[" + strings.Join(rows, ", ") + "]"
}
