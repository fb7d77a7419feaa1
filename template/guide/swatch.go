package guide

import (
	"errors"
	"math"

	"underlay/geometry"
	"underlay/paper/sheets"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// Measures of a swatch: plain cloth round its prints, and the reach for its ticks.
const (
	swatchBorder = 4 * geometry.Millimetre
	swatchReach  = 16 * geometry.Millimetre
	swatchApart  = 5 * geometry.Millimetre // of prints that stand for themselves
)

// Swatches draws a practice guide of each face: the same passes on a piece of scrap as large
// as a sheet takes, two prints by two at least. The error is of type Problems.
func Swatches(p *plan.Plan, ip *plan.ItemPlan) ([]Papers, error) {
	var all []Papers
	j := *p.Job
	j.Paper.Reach, j.Paper.LeastReach, j.Paper.Extent = swatchReach, swatchReach, job.FullExtent
	for _, face := range ip.Faces() {
		scrap := scrap(face, &j)
		j.Items = []*job.Item{scrap}
		worked, err := plan.New(&j)
		if err != nil {
			// Of a scrap in straight rows, without zones, that is all there can be.
			return nil, job.Problems{j.Problem(ip.Item.Line, "item %s: pass %s has no room on its swatch, which is no larger than a sheet; take swatch out of --parts",
				words.Quote(ip.Item.Name), words.Quote(failedPass(scrap, err)))}
		}
		sp := worked.Items[0]
		practice := plan.FacePlan{Item: sp, Names: face.Names}
		first := 1
		for _, pp := range sp.Printed() {
			practice.Passes = append(practice.Passes, plan.FacePass{PassPlan: pp, First: first})
			first += len(pp.Prints)
		}
		drawing, tiling, err := Spread(&j, practice)
		if err != nil {
			return nil, job.Problems{j.Problem(ip.Item.Line, "item %s: its swatch: %s", words.Quote(ip.Item.Name), sheetWords(&j, err))}
		}
		sheets, pages := sheets.Furnish(drawing, tiling, panel(practice, &j, drawing))
		all = append(all, Papers{Name: face.Titled("swatch"), Mark: Mark(&j, practice), Pages: pages, Sheets: sheets})
	}
	return all, nil
}

// failedPass returns the name of the first pass of an item that could not be worked out.
func failedPass(item *job.Item, err error) string {
	var problems job.Problems
	errors.As(err, &problems)
	for _, pass := range item.Passes {
		if len(problems) > 0 && pass.Line == problems[0].Line {
			return pass.Name
		}
	}
	return ""
}

// scrap returns the piece a face is practised on. Its passes are the face's own, each with
// the gap it has there; a frame, rings and single prints
// are practised in straight rows.
func scrap(f plan.FacePlan, j *job.Job) *job.Item {
	scrap := &job.Item{
		Name: "swatch for " + f.Item.Item.Name, Shape: job.Rectangle, Quantity: 1,
		Border: geometry.EvenEdges(swatchBorder), Line: f.Item.Item.Line,
	}
	wholes := f.Wholes()
	first := wholes[0].Choice()
	cell := wholes[0].Pass.Block.Size
	if wholes[0].Pass.Turns.AllAside() {
		cell = cell.Swap()
	}
	if !wholes[0].Pass.Mix.None() {
		cell = wholes[0].Pass.Place()
	}
	pitch := first.Pitch
	if wholes[0].Pass.Repeat.Single() {
		first.Gap = job.Spacing{Across: swatchApart, Down: swatchApart}
	}
	if pitch.Across <= 0 || pitch.Down <= 0 {
		pitch = job.Spacing{Across: cell.W + first.Gap.Across, Down: cell.H + first.Gap.Down}
	}
	around := 2 * (swatchBorder + swatchReach)
	best := geometry.Size{}
	most := 0
	for _, page := range []geometry.Size{ReadingStock(j).Size, ReadingStock(j).Size.Swap()} {
		room := geometry.Size{W: page.W - 2*j.Paper.Margin, H: page.H - 2*j.Paper.Margin}
		count := func(room, face, pitch geometry.Length) int {
			return max(2, int(math.Floor(float64((room-around-face)/pitch+geometry.Tolerance)))+1)
		}
		across, down := count(room.W, cell.W, pitch.Across), count(room.H, cell.H, pitch.Down)
		size := geometry.Size{
			W: geometry.Length(across-1)*pitch.Across + cell.W, H: geometry.Length(down-1)*pitch.Down + cell.H,
		}
		fits := size.W+around <= room.W+geometry.Tolerance && size.H+around <= room.H+geometry.Tolerance
		if n := across * down; fits && n > most || most == 0 && best == (geometry.Size{}) {
			best = size
			if fits {
				most = n
			}
		}
	}
	scrap.Size = geometry.Size{W: best.W + 2*swatchBorder, H: best.H + 2*swatchBorder}
	scrap.Outline = geometry.RectOutline(geometry.RectAt(geometry.Point{}, scrap.Size))
	copies := map[*job.Pass]*job.Pass{}
	for _, p := range wholes {
		q := *p.Pass
		q.Face = ""
		c := p.Choice()
		q.Gap = job.Gaps{Across: job.Gap{Least: c.Gap.Across, Most: c.Gap.Across}, Down: job.Gap{Least: c.Gap.Down, Most: c.Gap.Down}}
		q.CentreAcross, q.CentreDown, q.Exactly = job.OnBest, job.OnBest, job.Counts{}
		if q.Repeat.Single() {
			// Enough to see each for itself.
			apart := job.Gap{Least: swatchApart, Most: swatchApart}
			q.Gap, q.Turns = job.Gaps{Across: apart, Down: apart}, job.Turns{{0}}
		}
		if !q.Repeat.Lattice() {
			q.Repeat = job.Straight
		}
		q.Between, q.On = copies[p.Pass.Between], copies[p.Pass.On]
		copies[p.Pass] = &q
		scrap.Passes = append(scrap.Passes, &q)
	}
	return scrap
}
