package side

import (
	"fmt"
	"strings"
	"testing"
)

// sized is a job of a straight repeat of so many prints across and down.
func sized(across, down int) string {
	text, _ := Start("cushion")
	text = strings.Replace(text, "90 x 90 mm", "20 x 20 mm", 1)
	text = strings.Replace(text, "98 x 98 mm", "22 x 22 mm", 1)
	return strings.Replace(text, "50 x 50 cm", fmt.Sprintf("%d x %d mm", across*21+50, down*21+50), 1)
}

// BenchmarkLook works a job out and shows it as at each letter typed: another text every time.
func BenchmarkLook(b *testing.B) {
	for _, n := range []struct{ across, down int }{{10, 10}, {40, 50}, {80, 80}, {200, 200}} {
		b.Run(fmt.Sprint(n.across*n.down), func(b *testing.B) {
			s := New()
			text := sized(n.across, n.down)
			for i := range b.N {
				st := s.Look(text+fmt.Sprintf("# %d\n", i), Picked{}, 700)
				if !st.Good || st.Picture.Prints != n.across*n.down {
					b.Fatal(st.Problems, st.Answer)
				}
				b.ReportMetric(float64(len(st.Picture.SVG)), "bytes")
				b.ReportMetric(float64(len(st.Order.SVG)), "orderbytes")
			}
		})
	}
}
