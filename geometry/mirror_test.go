package geometry

import "testing"

// TestMirror: what is mirrored twice is what it was; lopsided things differ from their mirror image.
func TestMirror(t *testing.T) {
	flag := PolygonOutline(Polygon{{0, 0}, {40, 0}, {40, 30}, {10, 30}})
	for _, c := range []struct {
		name string
		o    Outline
		even bool
	}{
		{"rectangle", RectOutline(RectAt(Pt(0, 0), Size{40, 30})), true},
		{"circle", CircleOutline(Pt(20, 20), 20), true},
		{"house", PolygonOutline(Polygon{{0, 15}, {20, 0}, {40, 15}, {40, 30}, {0, 30}}), true},
		{"flag", flag, false},
		{"beside the middle", RectOutline(RectAt(Pt(0, 0), Size{30, 30})), false},
	} {
		m := c.o.Mirror(40)
		if m.Near(c.o) != c.even {
			t.Errorf("%s: %v is like %v: %v", c.name, m, c.o, !c.even)
		}
		if back := m.Mirror(40); !back.Near(c.o) {
			t.Errorf("%s: twice mirrored is %v", c.name, back)
		}
		if !c.o.None() && m.Area() != c.o.Area() {
			t.Errorf("%s: area %v, was %v", c.name, m.Area(), c.o.Area())
		}
	}
	// A point in the flag's lower left corner, which is cut off, is in the mirror image.
	if m := flag.Mirror(40); !flag.Contains(Pt(38, 28)) || flag.Contains(Pt(2, 28)) || !m.Contains(Pt(2, 28)) || m.Contains(Pt(38, 28)) {
		t.Errorf("%v", m)
	}
	if e := (Edges{1, 2, 3, 4}).Mirror(); e != (Edges{1, 4, 3, 2}) {
		t.Errorf("edges %v", e)
	}
}
