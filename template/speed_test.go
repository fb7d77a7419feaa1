package template

import (
	"bytes"
	"fmt"
	"runtime"
	"runtime/metrics"
	"strings"
	"testing"
	"time"
	"underlay/paper/pdf"
	"underlay/template/guide"
	"underlay/template/jobfile"
	"underlay/template/plan"
)

// speedJob is a job to be timed. The figure in its name is about how many prints it has.
type speedJob struct {
	name string
	text string
}

// cloth is a cloth that holds so many prints across and down, of a square block.
func cloth(block, gap float64, across, down int, pass string) string {
	side := func(n int) float64 { return float64(n)*(block+gap) - gap + 40.5 }
	return fmt.Sprintf("[[block]]\nname = 'pebble'\nprint = '%g x %g mm'\n"+
		"[[item]]\nname = 'bench runner'\nsize = '%g x %g mm'\nborder = '20 mm'\n"+
		"[[item.pass]]\nblock = 'pebble'\n%s", block, block, side(across), side(down), pass)
}

const gapOne = "gap = '1 mm'\n"

func speedJobs() []speedJob {
	jobs := []speedJob{
		{"straight/25", cloth(30, 1, 5, 5, gapOne)},
		{"straight/1000", cloth(10, 1, 25, 40, gapOne)},
		{"straight/10000", cloth(10, 1, 100, 100, gapOne)},
		{"straight/100000", cloth(10, 1, 250, 400, gapOne)},
		{"straight-20mm/1000", cloth(20, 1, 25, 40, gapOne)},
		{"straight-20mm/10000", cloth(20, 1, 100, 100, gapOne)},
	}
	for _, repeat := range []string{"brick", "half-drop", "honeycomb", "diagonal"} {
		text := cloth(20, 1, 32, 32, gapOne+"repeat = '"+repeat+"'\n")
		if repeat == "honeycomb" {
			text = strings.Replace(text, "print = '20 x 20 mm'", "shape = 'round'\nprint = '20 mm'", 1)
		}
		jobs = append(jobs, speedJob{repeat + "/1000", text})
	}
	return append(jobs,
		speedJob{"frame/1000", cloth(10, 1, 250, 250, gapOne+"repeat = 'frame'\n")},
		speedJob{"rings/1000", "[[block]]\nname = 'pebble'\nprint = '20 x 20 mm'\n" +
			"[[item]]\nname = 'stool top'\nshape = 'round'\nsize = '860 mm'\nborder = '20 mm'\n" +
			"[[item.pass]]\nblock = 'pebble'\ngap = '1 mm'\nrepeat = 'rings'\n"},
		speedJob{"seated/1000", cloth(30, 1, 23, 23, gapOne+"[[block]]\nname = 'seed'\nprint = '6 x 6 mm'\nshape = 'round'\n"+
			"[[item.pass]]\nblock = 'seed'\non = 'pebble'\n")},
		speedJob{"drum/1000", "[[block]]\nname = 'pebble'\nprint = '20 x 20 mm'\n" +
			"[[item]]\nname = 'lampshade'\nshape = 'drum'\ndiameter = '25 cm'\nheight = '63 cm'\nborder = '20 mm'\n" +
			"[[item.pass]]\nblock = 'pebble'\ngap = '1 mm'\n"},
		speedJob{"curtain/8000", "[[block]]\nname = 'pebble'\nprint = '30 x 30 mm'\n" +
			"[[item]]\nname = 'curtain'\nsize = '3000 x 2600 mm'\nborder = '20 mm'\n[[item.pass]]\nblock = 'pebble'\n" + gapOne},
		speedJob{"items/50", fiftyItems()},
	)
}

func fiftyItems() string {
	var b strings.Builder
	b.WriteString("[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n")
	for i := range 50 {
		fmt.Fprintf(&b, "[[item]]\nname = 'cushion %d'\nsize = '%d x 500 mm'\nborder = '25 mm'\n[[item.pass]]\nblock = 'fern'\n%s", i+1, 400+i, gapOne)
	}
	return b.String()
}

// BenchmarkDraw times what draw does, step by step, and beside it the floor: the same pages
// handed to fpdf from a list.
func BenchmarkDraw(b *testing.B) {
	for _, j := range speedJobs() {
		b.Run(j.name, func(b *testing.B) { benchmarkDraw(b, j.text) })
	}
}

func benchmarkDraw(b *testing.B, text string) {
	job, err := jobfile.Read("nook.toml", []byte(text))
	if err != nil {
		b.Fatal(err)
	}
	var file, floor bytes.Buffer
	prints, pages := 0, 0
	var planned, tiled, drawn, written, onFloor fastest
	draw := func() {
		file.Reset()
		start := time.Now()
		plan, err := plan.New(job)
		if err != nil {
			b.Fatal(err)
		}
		planned.add(time.Since(start))
		start = time.Now()
		for _, ip := range plan.Items {
			for _, face := range ip.Laid() {
				if _, _, err := guide.Spread(job, face); err != nil {
					b.Fatal(err)
				}
			}
		}
		tiled.add(time.Since(start)) // once more within Document, where it counts
		start = time.Now()
		doc, _, err := Document(plan, UsualParts())
		if err != nil {
			b.Fatal(err)
		}
		drawn.add(time.Since(start))
		start = time.Now()
		if err := pdf.Write(&file, doc); err != nil {
			b.Fatal(err)
		}
		written.add(time.Since(start))
		prints = 0
		for _, ip := range plan.Items {
			for _, p := range ip.Passes {
				prints += len(p.Prints)
			}
		}
	}
	draw()
	calls := readCalls(b, file.Bytes())
	pages = len(calls)
	var before, after runtime.MemStats
	var taken uint64
	rounds := 0
	for b.Loop() {
		rounds++
		runtime.GC()
		runtime.ReadMemStats(&before)
		draw()
		runtime.ReadMemStats(&after)
		taken += after.TotalAlloc - before.TotalAlloc
		runtime.GC()
		floor.Reset()
		start := time.Now()
		writeFloor(b, &floor, calls)
		onFloor.add(time.Since(start))
	}
	whole := planned.ms() + drawn.ms() + written.ms()
	b.ReportMetric(whole*1e6, "ns/op")
	b.ReportMetric(float64(prints), "prints")
	b.ReportMetric(float64(pages), "pages")
	b.ReportMetric(planned.ms(), "ms_plan")
	b.ReportMetric(tiled.ms(), "ms_tile")
	b.ReportMetric(drawn.ms(), "ms_document")
	b.ReportMetric(written.ms(), "ms_write")
	b.ReportMetric(onFloor.ms(), "ms_floor")
	b.ReportMetric(whole/onFloor.ms(), "x_floor")
	b.ReportMetric(100*planned.ms()/whole, "%plan")
	b.ReportMetric(whole*1e6/float64(prints), "ns/print")
	b.ReportMetric(float64(taken)/float64(rounds*prints), "B/print")
	b.ReportMetric(float64(file.Len())/float64(floor.Len()), "x_floor_bytes")
	b.ReportMetric(peak(draw)/1e6, "peak_MB")
}

// fastest is the shortest of the times a step took: what else the machine was doing then
// counts least.
type fastest struct{ time.Duration }

func (f *fastest) add(d time.Duration) {
	if f.Duration == 0 || d < f.Duration {
		f.Duration = d
	}
}

func (f fastest) ms() float64 { return float64(f.Nanoseconds()) / 1e6 }

// peak returns the most memory that was in use by the heap, with what waits to be collected,
// while f ran, looked at every millisecond.
func peak(f func()) float64 {
	runtime.GC()
	done, most := make(chan bool), make(chan uint64)
	go func() {
		var top uint64
		s := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
		tick := time.NewTicker(time.Millisecond)
		defer tick.Stop()
		for {
			metrics.Read(s)
			top = max(top, s[0].Value.Uint64())
			select {
			case <-done:
				most <- top
				return
			case <-tick.C:
			}
		}
	}()
	f()
	done <- true
	return float64(<-most)
}
